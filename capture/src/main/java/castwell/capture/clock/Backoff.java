package castwell.capture.clock;

import java.time.Duration;

/**
 * How long to wait before each new try: the first delay, then each time the last one by a factor,
 * up to the longest. It belongs to one thread.
 */
public final class Backoff {
  private final Duration first;
  private final int factor;
  private final Duration longest;
  private Duration delay;

  public Backoff(Duration first, int factor, Duration longest) {
    this.first = first;
    this.factor = factor;
    this.longest = longest;
    this.delay = first;
  }

  /** The delay before the next try; the one after that has the longer. */
  public Duration next() {
    Duration now = delay;
    Duration longer = now.multipliedBy(factor);
    delay = longer.compareTo(longest) < 0 ? longer : longest;
    return now;
  }

  /** A try went well, so the next delay is the first one. */
  public void reset() {
    delay = first;
  }
}
