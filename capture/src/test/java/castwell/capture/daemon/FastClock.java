package castwell.capture.daemon;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.concurrent.locks.LockSupport;

/** A host's clocks, both of them running so many times faster than the real ones. */
final class FastClock extends Clock {
  private final Instant started;
  private final long startedNanos = System.nanoTime();
  private final int times;

  FastClock(Instant started, int times) {
    this.started = started;
    this.times = times;
  }

  long micros() {
    return (System.nanoTime() - startedNanos) * times / 1000;
  }

  void await(long micros) {
    for (long ahead = micros - micros(); ahead > 0; ahead = micros - micros()) {
      LockSupport.parkNanos(1000 * ahead / times);
    }
  }

  @Override
  public Instant instant() {
    return started.plusNanos(1000 * micros());
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
