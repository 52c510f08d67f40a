package castwell.capture.daemon;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.function.LongSupplier;

/** What instant a reading of the monotonic clock was. */
public interface HostClock {

  Instant at(long micros);

  /**
   * A live host. The wall clock is asked anew each time, so that a step of it, or a sleep of the
   * computer, doesn't shift what comes after.
   */
  static HostClock live(Clock clock, LongSupplier micros) {
    return reading -> clock.instant().minus(micros.getAsLong() - reading, ChronoUnit.MICROS);
  }

  /** A recording: its microseconds count from its start. */
  static HostClock recorded(Instant started) {
    return reading -> started.plus(reading, ChronoUnit.MICROS);
  }
}
