package castwell.capture.health;

import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.TickRate;
import java.util.Locale;

/** The board's clock against this computer's, and against what its oscillator may be off. */
final class ClockItem {
  private static final String NAME = "board's clock";
  private static final double PPM = 1e6;

  private ClockItem() {}

  static Item of(Vitals vitals) {
    return vitals
        .rate()
        .flatMap(rate -> rate.measured().map(measured -> of(rate, measured)))
        .orElseGet(
            () ->
                Item.cantTell(
                    NAME,
                    "Too few heartbeats are stored to tell the board's clock from this computer's.",
                    "Leave the board on for some minutes."));
  }

  private static Item of(BoardRate rate, TickRate measured) {
    double error = BoardRate.error(measured, rate.nominalHz());
    double bound = rate.oscillator().halfWidth();
    // Beyond the bound by more than twice the standard uncertainty: about 95 % sure.
    boolean refuted = Math.abs(error) - 2 * measured.relativeU() > bound;
    boolean vague = measured.relativeU() > bound;
    Level level = refuted ? Level.ATTENTION : vague ? Level.CANT_TELL : Level.WELL;
    String told =
        String.format(
            Locale.ROOT,
            "%s's clock runs %.0f ppm %s than it says, ± %.0f ppm; a %s may be %,.0f ppm off.",
            rate.device(),
            Math.abs(error) * PPM,
            error < 0 ? "slower" : "faster",
            measured.relativeU() * PPM,
            word(rate.oscillator()),
            bound * PPM);
    return Item.of(NAME, level, told, remedy(rate.oscillator(), refuted))
        .with(Measured.within(error * PPM, "ppm", measured.relativeU() * PPM, rate.beats()));
  }

  private static String remedy(Oscillator oscillator, boolean refuted) {
    if (!refuted) {
      return "Leave the board on for some minutes.";
    }
    return oscillator == Oscillator.CRYSTAL
        ? "Speeds go by the measured rate. Say \"resonator\" in castwell.toml if that is what it has, and see that this computer's clock is kept right."
        : "Speeds go by the measured rate. See that this computer's clock is kept right, and that the board tells its true tick rate.";
  }

  private static String word(Oscillator oscillator) {
    return oscillator.name().toLowerCase(Locale.ROOT);
  }
}
