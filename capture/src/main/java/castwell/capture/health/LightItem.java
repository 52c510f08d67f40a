package castwell.capture.health;

import castwell.analysis.shot.Gate;
import castwell.analysis.statistic.Median;
import castwell.analysis.wording.Phrase;
import castwell.capture.store.HeardBeat;
import castwell.capture.view.health.Level;
import castwell.capture.word.Rounded;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Compares the light at a gate's sensor with what it usually was while the beam was clear. */
final class LightItem {
  private static final String UNIT = "of 1023";
  private static final int RECENT = 10;

  /**
   * From this reading on the sensor is at the end of its scale, where neither less light nor more
   * would show.
   */
  private static final double TOP = 1020;

  /**
   * A smaller change than this is never reported, however steady the light was (common practice, no
   * source).
   */
  private static final double LEAST_CHANGE = 0.05;

  /** A loss of half the light leaves little to trigger on (common practice, no source). */
  private static final double BAD_LOSS = -0.5;

  private LightItem() {}

  static Item of(Vitals vitals, Gate gate) {
    Subject subject = Subject.of("light " + gate, "health.title_light", gate);
    List<HeardBeat> recent = newest(vitals.beats());
    if (recent.isEmpty()) {
      return Item.cantTell(
          subject, Phrase.of("health.light_none", gate), Phrase.of("health.see_port"));
    }
    double[] now =
        recent.stream().flatMapToInt(b -> clear(b, gate).stream()).asDoubleStream().toArray();
    if (now.length == 0) {
      return dark(subject, gate, recent);
    }
    double light = Median.of(now);
    Optional<Usual> usual = Usual.of(vitals.earlier(), beat -> clear(beat, gate));
    Item item =
        light >= TOP
            ? tooBright(subject, gate)
            : usual
                .map(u -> against(subject, gate, light, u))
                .orElseGet(() -> firstTime(subject, gate, light));
    return item.with(Measured.of(light, UNIT, now.length));
  }

  private static List<HeardBeat> newest(List<HeardBeat> beats) {
    return beats.subList(Math.max(0, beats.size() - RECENT), beats.size());
  }

  private static Item dark(Subject subject, Gate gate, List<HeardBeat> recent) {
    boolean measured = recent.stream().anyMatch(beat -> light(beat, gate).isPresent());
    return measured
        ? Item.bad(
            subject,
            Phrase.of("health.light_blocked", gate, recent.size()),
            Phrase.of("health.light_take_out"))
        : Item.cantTell(subject, Phrase.of("health.light_unmeasured", gate), Item.NOTHING);
  }

  private static Item tooBright(Subject subject, Gate gate) {
    return Item.attention(
        subject, Phrase.of("health.light_top", gate), Phrase.of("health.light_shade"));
  }

  private static Item firstTime(Subject subject, Gate gate, double light) {
    return Item.cantTell(
        subject,
        Phrase.of("health.light_first", gate, Rounded.to(0, light)),
        Phrase.of("health.light_align"));
  }

  private static Item against(Subject subject, Gate gate, double light, Usual usual) {
    double off = usual.off(light);
    boolean unlike = usual.isUnlike(light) && Math.abs(off) > LEAST_CHANGE;
    Level level = off < BAD_LOSS ? Level.BAD : unlike ? Level.ATTENTION : Level.WELL;
    Phrase told =
        Phrase.of(
            "health.light", gate, Rounded.to(0, light), Rounded.to(0, usual.median()), usual.n());
    Phrase remedy = off < 0 ? Phrase.of("health.light_wipe") : Phrase.of("health.light_sun");
    return Item.of(subject, level, told, remedy);
  }

  private static OptionalInt clear(HeardBeat beat, Gate gate) {
    boolean blocked =
        beat.beat()
            .levels()
            .map(levels -> gate == Gate.A ? levels.blockedA() : levels.blockedB())
            .orElse(true);
    return blocked ? OptionalInt.empty() : light(beat, gate);
  }

  private static OptionalInt light(HeardBeat beat, Gate gate) {
    var surroundings = beat.beat().surroundings();
    return gate == Gate.A ? surroundings.lightA() : surroundings.lightB();
  }
}
