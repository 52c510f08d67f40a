package castwell.capture.health;

import castwell.analysis.statistic.Median;
import castwell.capture.store.HeardBeat;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** The board's supply, against what it usually is. */
final class SupplyItem {
  private static final String NAME = "supply";

  /** What boards are commonly said to bear is 5 % or 10 % (common practice, no source). */
  private static final double ATTENTION_OFF = 0.05;

  private static final double BAD_OFF = 0.10;

  private SupplyItem() {}

  static Item of(Vitals vitals) {
    double[] now =
        vitals.beats().stream().flatMapToInt(beat -> mv(beat).stream()).asDoubleStream().toArray();
    if (now.length == 0) {
      return Item.cantTell(NAME, "No heartbeat tells the board's supply now.", "See the port.");
    }
    double mv = Median.of(now);
    Optional<Usual> usual = Usual.of(vitals.earlier(), SupplyItem::mv);
    return usual
        .map(u -> against(mv, u))
        .orElseGet(
            () ->
                Item.cantTell(
                    NAME,
                    String.format(
                        Locale.ROOT,
                        "The board gets %.0f mV; what is usual isn't known before two hours were heard.",
                        mv),
                    "Nothing to do but to wait."))
        .with(Measured.of(mv, "mV", now.length));
  }

  private static Item against(double mv, Usual usual) {
    double off = Math.abs(usual.off(mv));
    Level level = off > BAD_OFF ? Level.BAD : off > ATTENTION_OFF ? Level.ATTENTION : Level.WELL;
    return Item.of(
        NAME,
        level,
        String.format(
            Locale.ROOT,
            "The board gets %.0f mV, usually %.0f mV (median of %d earlier readings).",
            mv,
            usual.median(),
            usual.n()),
        "Try another USB port, cable or supply; charge its battery if it has one.");
  }

  private static OptionalInt mv(HeardBeat beat) {
    return beat.beat().surroundings().supplyMv();
  }
}
