package castwell.capture.clock;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.function.LongSupplier;

/** What instant a reading of the monotonic clock was. */
public interface HostClock {

  Instant at(long micros);

  /** The instant at which this clock begins to be asked. */
  Instant now();

  /**
   * A live host. The wall clock is asked anew each time, so that a step of it, or a sleep of the
   * computer, doesn't shift what comes after.
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

  /** A recording: its microseconds count from its start. */
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
