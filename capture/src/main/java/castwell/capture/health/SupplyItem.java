package castwell.capture.health;

import castwell.analysis.statistic.Median;
import castwell.analysis.wording.Phrase;
import castwell.capture.store.HeardBeat;
import castwell.capture.view.health.Level;
import castwell.capture.word.Rounded;
import java.util.Optional;
import java.util.OptionalInt;

/** Compares the board's supply voltage with what it usually is. */
final class SupplyItem {
  private static final Subject SUBJECT = Subject.of("supply", "health.title_supply");

  /**
   * How far the supply may be off, relatively: boards are commonly said to bear 5 % or 10 % (common
   * practice, no source).
   */
  private static final double ATTENTION_OFF = 0.05;

  private static final double BAD_OFF = 0.10;

  private SupplyItem() {}

  static Item of(Vitals vitals) {
    double[] now =
        vitals.beats().stream().flatMapToInt(beat -> mv(beat).stream()).asDoubleStream().toArray();
    if (now.length == 0) {
      return Item.cantTell(SUBJECT, Phrase.of("health.supply_none"), Phrase.of("health.see_port"));
    }
    double mv = Median.of(now);
    Optional<Usual> usual = Usual.of(vitals.earlier(), SupplyItem::mv);
    return usual
        .map(u -> against(mv, u))
        .orElseGet(
            () ->
                Item.cantTell(
                    SUBJECT,
                    Phrase.of("health.supply_first", Rounded.to(0, mv)),
                    Phrase.of("health.wait")))
        .with(Measured.of(mv, "mV", now.length));
  }

  private static Item against(double mv, Usual usual) {
    double off = Math.abs(usual.off(mv));
    Level level = off > BAD_OFF ? Level.BAD : off > ATTENTION_OFF ? Level.ATTENTION : Level.WELL;
    return Item.of(
        SUBJECT,
        level,
        Phrase.of("health.supply", Rounded.to(0, mv), Rounded.to(0, usual.median()), usual.n()),
        Phrase.of("health.supply_remedy"));
  }

  private static OptionalInt mv(HeardBeat beat) {
    return beat.beat().surroundings().supplyMv();
  }
}
