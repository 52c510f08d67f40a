package castwell.web.access;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/**
 * Wrong keys, slowed: of one address five at once and then one in 20 s, of all addresses sixty at
 * once and then one a second. Until then the right key isn't looked at either.
 */
public final class Attempts {
  /** Whoever comes from more addresses than are remembered is slowed with all others. */
  private static final int MOST_ADDRESSES = 4096;

  private static final Pace OF_ONE = new Pace(5, Duration.ofSeconds(20));
  private static final Pace OF_ALL = new Pace(60, Duration.ofSeconds(1));

  private final LongSupplier nanos;
  private final Allowance all;
  private final Map<String, Allowance> byAddress =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Allowance> eldest) {
          return size() > MOST_ADDRESSES;
        }
      };

  /** What became of an attempt. */
  public sealed interface Outcome permits Right, Wrong, Wait {}

  public record Right() implements Outcome {}

  public record Wrong() implements Outcome {}

  /**
   * @param time until another is looked at
   */
  public record Wait(Duration time) implements Outcome {}

  private record Pace(int atOnce, Duration again) {}

  /**
   * @param nanos a monotonic clock
   */
  public Attempts(LongSupplier nanos) {
    this.nanos = nanos;
    this.all = new Allowance(OF_ALL, nanos.getAsLong());
  }

  /** One at a time, so that many at once are no way around. */
  public synchronized Outcome attempt(String address, BooleanSupplier isRight) {
    long now = nanos.getAsLong();
    Allowance own = byAddress.computeIfAbsent(address, a -> new Allowance(OF_ONE, now));
    long wait = Math.max(own.waitNanos(now), all.waitNanos(now));
    if (wait > 0) {
      return new Wait(Duration.ofNanos(wait));
    }
    if (isRight.getAsBoolean()) {
      return new Right();
    }
    own.spend();
    all.spend();
    return new Wrong();
  }

  /** How many wrong ones are still allowed; it fills up again with time. */
  private static final class Allowance {
    private final Pace pace;
    private double left;
    private long reckonedAt;

    Allowance(Pace pace, long now) {
      this.pace = pace;
      this.left = pace.atOnce();
      this.reckonedAt = now;
    }

    /** 0 when one may be made now. */
    long waitNanos(long now) {
      double gained = (double) (now - reckonedAt) / pace.again().toNanos();
      left = Math.min(pace.atOnce(), left + gained);
      reckonedAt = now;
      return left >= 1 ? 0 : (long) Math.ceil((1 - left) * pace.again().toNanos());
    }

    void spend() {
      left -= 1;
    }
  }
}
