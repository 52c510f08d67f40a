package castwell.capture.daemon;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;

/** A computer's two clocks: one counts on, the other a person may set. */
public final class SteppedClock extends Clock {
  private final Instant started;
  private long micros;
  private Duration set = Duration.ZERO;

  public SteppedClock(Instant started) {
    this.started = started;
  }

  public long micros() {
    return micros;
  }

  public void passTimeUntil(long reading) {
    micros = reading;
  }

  /** Below zero: back. */
  public void set(Duration by) {
    set = set.plus(by);
  }

  @Override
  public Instant instant() {
    return started.plus(micros, ChronoUnit.MICROS).plus(set);
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    throw new UnsupportedOperationException();
  }
}
