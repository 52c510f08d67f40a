package castwell.capture.rehearsal;

import java.util.Random;

/** The pretended board's tick counter, which starts at 0 and runs a little off its nominal rate. */
record PretendCounter(double startMicros, double ticksPerMicro) {
  /** The most by which the rate is off, within the half percent that a ceramic resonator may be. */
  private static final double MOST_OFF = 0.003;

  static PretendCounter ofResonator(double startMicros, int hz, Random random) {
    double off = MOST_OFF * (2 * random.nextDouble() - 1);
    return new PretendCounter(startMicros, hz / 1e6 * (1 + off));
  }

  long ticks(double micros) {
    return (long) ((micros - startMicros) * ticksPerMicro);
  }

  /** The low 32 bits, as an edge's sentence carries them. */
  static long low32(long ticks) {
    return ticks & 0xFFFF_FFFFL;
  }
}
