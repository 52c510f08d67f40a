package castwell.capture.health;

import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.TickRate;
import castwell.analysis.wording.Phrase;
import castwell.capture.view.health.Level;
import castwell.capture.word.Rounded;
import java.util.Locale;

/**
 * Compares the board's clock with this computer's, and the difference with the tolerance of its
 * oscillator.
 */
final class ClockItem {
  private static final Subject SUBJECT = Subject.of("board's clock", "health.title_board_s_clock");
  private static final double PPM = 1e6;

  private ClockItem() {}

  static Item of(Vitals vitals) {
    return vitals
        .rate()
        .flatMap(rate -> rate.measured().map(measured -> of(rate, measured)))
        .orElseGet(
            () ->
                Item.cantTell(
                    SUBJECT, Phrase.of("health.clock_few"), Phrase.of("health.clock_wait")));
  }

  private static Item of(BoardRate rate, TickRate measured) {
    double error = BoardRate.error(measured, rate.nominalHz());
    double bound = rate.oscillator().halfWidth();
    // The difference exceeds the bound by more than twice its standard uncertainty, which is about
    // 95 % sure.
    boolean refuted = Math.abs(error) - 2 * measured.relativeU() > bound;
    boolean vague = measured.relativeU() > bound;
    Level level = refuted ? Level.ATTENTION : vague ? Level.CANT_TELL : Level.WELL;
    Phrase told =
        Phrase.of(
            error < 0 ? "health.clock_slower" : "health.clock_faster",
            rate.device(),
            Rounded.to(0, Math.abs(error) * PPM),
            Rounded.to(0, measured.relativeU() * PPM),
            word(rate.oscillator()),
            Rounded.grouped(bound * PPM));
    return Item.of(SUBJECT, level, told, remedy(rate.oscillator(), refuted))
        .with(Measured.within(error * PPM, "ppm", measured.relativeU() * PPM, rate.beats()));
  }

  private static Phrase remedy(Oscillator oscillator, boolean refuted) {
    if (!refuted) {
      return Phrase.of("health.clock_wait");
    }
    return oscillator == Oscillator.CRYSTAL
        ? Phrase.of("health.clock_crystal")
        : Phrase.of("health.clock_off");
  }

  private static Phrase word(Oscillator oscillator) {
    return Phrase.of("health.oscillator_" + oscillator.name().toLowerCase(Locale.ROOT));
  }
}
