package castwell.capture.clock;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Notices when this computer's wall clock was set, or the computer slept, by comparing the wall
 * clock with the monotonic clock. One thread looks; any thread may read.
 */
public final class ClockSteps {
  /**
   * The least step: a clock that is kept right is slewed by less, and a busy host reads two clocks
   * within less.
   */
  private static final Duration LEAST = Duration.ofMillis(500);

  private final Clock clock;
  private final LongSupplier micros;
  private Instant lastInstant;
  private long lastMicros;
  private volatile Optional<ClockStep> last = Optional.empty();

  public ClockSteps(Clock clock, LongSupplier micros) {
    this.clock = clock;
    this.micros = micros;
    this.lastMicros = micros.getAsLong();
    this.lastInstant = clock.instant();
  }

  public void look() {
    long nowMicros = micros.getAsLong();
    Instant now = clock.instant();
    Duration by = Duration.between(lastInstant, now).minusNanos((nowMicros - lastMicros) * 1_000L);
    if (by.abs().compareTo(LEAST) > 0) {
      last = Optional.of(new ClockStep(now, by));
    }
    lastInstant = now;
    lastMicros = nowMicros;
  }

  public Optional<ClockStep> last() {
    return last;
  }
}
