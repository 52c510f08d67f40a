package castwell.capture.clock;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.function.LongSupplier;

/** Tells at what instant the host's monotonic clock had a reading. */
public interface HostClock {

  Instant at(long micros);

  /** The present instant, or where a recording is replayed the instant at which it began. */
  Instant now();

  /**
   * The clock of a live host. The wall clock is asked anew each time, so that a step of it, or a
   * sleep of the computer, doesn't shift what comes after.
   */
  static HostClock live(Clock clock, LongSupplier micros) {
    return new HostClock() {
      @Override
      public Instant at(long reading) {
        return now().minus(micros.getAsLong() - reading, ChronoUnit.MICROS);
      }

      @Override
      public Instant now() {
        return clock.instant();
      }
    };
  }

  /** The clock of a recording, whose microseconds count from its start. */
  static HostClock recorded(Instant started) {
    return new HostClock() {
      @Override
      public Instant at(long reading) {
        return started.plus(reading, ChronoUnit.MICROS);
      }

      @Override
      public Instant now() {
        return started;
      }
    };
  }
}
