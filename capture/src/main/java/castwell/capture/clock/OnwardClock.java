package castwell.capture.clock;

import castwell.analysis.wording.Phrase;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * A clock that follows the computer's clock but doesn't go back when that is set back. It then goes
 * on from where it was, at the pace of the monotonic clock, until the computer's clock is past it
 * again. So what is shot later is dated later, and gets the tags, gates, session and end that were
 * set last. A computer's clock that is set back by more than a day is followed all the same, since
 * the earlier dates were too wrong to go on from.
 */
public final class OnwardClock extends Clock {
  private static final Duration FURTHEST = Duration.ofDays(1);

  /** The least deviation of the computer's clock that people are told of. */
  private static final Duration NOTEWORTHY = Duration.ofSeconds(2);

  private final Clock host;
  private final LongSupplier micros;
  private final Consumer<Phrase> listener;
  private Instant last;
  private long lastMicros;

  /** The latest date that was given to anything. */
  private Instant latest;

  private Duration ahead = Duration.ZERO;
  private Optional<Phrase> sentence = Optional.empty();

  /**
   * @param micros the host's monotonic clock
   * @param listener is told, in a sentence, when the computer's clock was set back or is right
   *     again
   */
  public OnwardClock(Clock host, LongSupplier micros, Consumer<Phrase> listener) {
    this.host = host;
    this.micros = micros;
    this.listener = listener;
    this.last = host.instant();
    this.latest = last;
    this.lastMicros = micros.getAsLong();
  }

  /**
   * Goes on from a date that an earlier run gave to something, so that what comes is dated later,
   * unless that date is more than a day ahead.
   */
  public synchronized void goOnFrom(Instant dated) {
    if (dated.isAfter(instant())) {
      last = dated;
      latest = dated;
      instant();
    }
  }

  @Override
  public synchronized Instant instant() {
    Instant told = host.instant();
    long now = micros.getAsLong();
    Instant expected = last.plus(now - lastMicros, ChronoUnit.MICROS);
    Duration back = Duration.between(told, expected);
    boolean goesOn = told.isBefore(last) && back.compareTo(FURTHEST) <= 0;
    last = goesOn ? expected : told;
    lastMicros = now;
    latest = last.isAfter(latest) ? last : latest;
    tell(goesOn ? back : Duration.ZERO);
    return last;
  }

  /** What is amiss with the computer's clock, if anything is. */
  public synchronized Optional<Phrase> sentence() {
    instant();
    return sentence;
  }

  private void tell(Duration aheadNow) {
    if (aheadNow.minus(ahead).abs().compareTo(NOTEWORTHY) >= 0 || aheadNow.isZero()) {
      ahead = aheadNow;
    }
    Optional<Phrase> before = sentence;
    sentence = amiss();
    if (!sentence.equals(before)) {
      listener.accept(sentence.orElse(Phrase.of("clock.right")));
    }
  }

  private Optional<Phrase> amiss() {
    if (ahead.compareTo(NOTEWORTHY) >= 0) {
      long seconds = Math.round(ahead.toMillis() / 1e3);
      return Optional.of(
          seconds < 120
              ? Phrase.of("clock.seconds_back", seconds)
              : Phrase.of("clock.minutes_back", Math.round(seconds / 60.0)));
    }
    return last.isBefore(latest.minus(FURTHEST))
        ? Optional.of(Phrase.of("clock.behind", latest.truncatedTo(ChronoUnit.SECONDS)))
        : Optional.empty();
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    throw new UnsupportedOperationException("the zone is said where dates are shown");
  }
}
