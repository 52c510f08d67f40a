package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.clock.ClockStep;
import castwell.capture.word.Lasting;
import castwell.capture.word.Rounded;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** Judges whether this computer's clock jumped. */
final class HostClockItem {
  private static final Subject SUBJECT =
      Subject.of("this computer's clock", "health.title_this_computer_s_clock");
  private static final Phrase REMEDY = Phrase.of("health.host_clock_remedy");

  /**
   * How long a jump is reported: whether an outing's shots have the right dates is a question of
   * that day.
   */
  private static final Duration RECENT = Duration.ofDays(1);

  private HostClockItem() {}

  /**
   * @param trouble what is wrong with the clock now
   * @param step the last time it jumped
   */
  static Item of(Optional<Phrase> trouble, Optional<ClockStep> step, Instant now) {
    return trouble
        .map(sentence -> Item.attention(SUBJECT, sentence, REMEDY))
        .orElseGet(() -> of(step, now));
  }

  private static Item of(Optional<ClockStep> step, Instant now) {
    return step.filter(s -> Duration.between(s.to(), now).compareTo(RECENT) < 0)
        .map(s -> jumped(s, now))
        .orElseGet(() -> Item.well(SUBJECT, Phrase.of("health.host_clock_well")));
  }

  private static Item jumped(ClockStep step, Instant now) {
    double seconds = step.by().toMillis() / 1e3;
    return Item.attention(
            SUBJECT,
            Phrase.of(
                seconds < 0 ? "health.host_clock_back" : "health.host_clock_forward",
                Rounded.to(1, Math.abs(seconds)),
                Lasting.words(Duration.between(step.to(), now))),
            REMEDY)
        .with(Measured.of(seconds, "s", 1));
  }
}
