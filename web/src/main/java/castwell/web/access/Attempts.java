package castwell.web.access;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/**
 * Slows down the trying of keys. One address may be wrong five times at once and then once in 20 s,
 * all addresses together sixty times at once and then once a second. Whoever has to wait isn't let
 * in by the right key either.
 */
public final class Attempts {
  /** How many addresses are remembered; those beyond share the limit of all together. */
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

  /** The result of an attempt. */
  public sealed interface Outcome permits Right, Wrong, Wait {}

  public record Right() implements Outcome {}

  public record Wrong() implements Outcome {}

  /**
   * @param time how long until another attempt is looked at
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

  /**
   * Makes an attempt. They are made one at a time, so that many at once don't get round the limits.
   */
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

  /** How many wrong attempts are still allowed; with time there are more again. */
  private static final class Allowance {
    private final Pace pace;
    private double left;
    private long reckonedAt;

    Allowance(Pace pace, long now) {
      this.pace = pace;
      this.left = pace.atOnce();
      this.reckonedAt = now;
    }

    /** How long to wait for the next attempt in ns; 0 when one may be made now. */
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
