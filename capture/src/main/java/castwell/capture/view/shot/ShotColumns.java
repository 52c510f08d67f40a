package castwell.capture.view.shot;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;
import static castwell.analysis.unit.Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;

import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Wording;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shot;
import castwell.capture.view.Column;
import castwell.capture.view.Column.Type;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A shot as a row in trade units: in exports, on the live feed and in the API alike. */
public final class ShotColumns {
  private final List<Column<Shot>> columns;

  /**
   * @param zone in which a bow state's date is told
   * @param wording in which a reason is told
   */
  public ShotColumns(ZoneId zone, Wording wording) {
    columns =
        List.of(
            Column.text("shot_id", "names the shot for ever", s -> Optional.of(s.shotId())),
            new Column<>(
                "fired_at",
                Type.DATE_TIME,
                "",
                "when its first edge was stamped, UTC",
                s -> Optional.of(s.fired().toString())),
            Column.text("device", "the board's name", s -> s.byGates().map(g -> g.device())),
            Column.whole(
                "boot", "the board's count of its starts", s -> s.byGates().map(g -> g.boot())),
            Column.whole(
                "first_edge",
                "number of the passage's first edge since that start",
                s -> s.byGates().map(g -> g.firstEdge())),
            Column.text("session", "the outing", s -> Optional.of(s.session())),
            Column.whole("end", "the arrows shot before fetching them", s -> Optional.of(s.end())),
            Column.text("bow", "the tagged bow", s -> s.bow().map(BowState::bow)),
            Column.text(
                "bow_state",
                "since when the bow is as it is",
                s -> s.bow().map(bow -> stateName(bow.since(), zone))),
            Column.text("arrow", "the tagged arrow", s -> s.arrow().map(arrow -> arrow.name())),
            Column.number(
                "arrow_mass_gr",
                "grain",
                "mass of the arrow",
                s -> s.arrow().map(arrow -> arrow.massKg() / KILOGRAMS_PER_GRAIN)),
            Column.number(
                "draw_weight_lb",
                "pound-force",
                "draw weight at the draw length",
                s -> s.bow().map(bow -> bow.drawWeightN() / NEWTONS_PER_POUND)),
            Column.number(
                "draw_length_in",
                "inch",
                "draw length of the draw weight",
                s -> s.bow().map(bow -> bow.drawLengthM() / METRES_PER_INCH)),
            new Column<>(
                "counts",
                Type.BOOLEAN,
                "",
                "whether it counts: by rule unless a person decided",
                s -> Optional.of(s.counts())),
            Column.text(
                "verdict",
                "the rules' word: clean, or the most telling reason",
                s -> Optional.of(s.figure().verdict())),
            Column.text(
                "reason",
                "why it doesn't count, or who brought it back",
                s -> Optional.of(wording.say(s.reasons())).filter(reason -> !reason.isEmpty())),
            Column.number(
                "speed_fps",
                "foot per second",
                "speed between the gates, from front and tail together",
                s -> value(ShotFigures.speed(s), METRES_PER_FOOT)),
            Column.number(
                "speed_u_own_fps",
                "foot per second",
                "standard uncertainty of the speed: the shot's own part",
                s -> ShotFigures.part(ShotFigures.speed(s), Kind.OWN, METRES_PER_FOOT)),
            Column.number(
                "speed_u_common_fps",
                "foot per second",
                "standard uncertainty of the speed: the part common to the set-up",
                s -> ShotFigures.part(ShotFigures.speed(s), Kind.COMMON, METRES_PER_FOOT)),
            Column.number(
                "front_fps",
                "foot per second",
                "speed from the front edges alone",
                s -> value(s.figure().frontMps(), METRES_PER_FOOT)),
            Column.number(
                "tail_fps",
                "foot per second",
                "speed from the tail edges alone",
                s -> value(s.figure().tailMps(), METRES_PER_FOOT)),
            Column.number(
                "length_mm",
                "millimetre",
                "length of what went through",
                s -> value(s.figure().lengthM(), 1e-3)),
            Column.number(
                "kinetic_energy_ftlbf",
                "foot pound-force",
                "kinetic energy between the gates",
                s -> value(ShotFigures.kineticEnergy(s), JOULES_PER_FOOT_POUND)),
            Column.number(
                "momentum_slug_fps",
                "slug foot per second",
                "momentum between the gates",
                s -> value(ShotFigures.momentum(s), NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND)),
            Column.number(
                "grains_per_pound",
                "grain per pound-force",
                "arrow mass over draw weight",
                ShotFigures::grainsPerPound),
            Column.text("station", "where the gates stand", s -> Optional.of(s.station())),
            Column.number(
                "kinetic_energy_u_ftlbf",
                "foot pound-force",
                "standard uncertainty of the kinetic energy, mass taken as exact",
                s -> uncertainty(ShotFigures.kineticEnergy(s), JOULES_PER_FOOT_POUND)),
            Column.number(
                "momentum_u_slug_fps",
                "slug foot per second",
                "standard uncertainty of the momentum, mass taken as exact",
                s -> uncertainty(ShotFigures.momentum(s), NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND)),
            Column.number(
                "speed_at_bow_fps",
                "foot per second",
                "speed at the bow, by the drag law; needs the arrow's diameter",
                s -> value(ShotFigures.speedAtBow(s), METRES_PER_FOOT)),
            Column.number(
                "speed_at_bow_u_fps",
                "foot per second",
                "standard uncertainty of the speed at the bow",
                s -> uncertainty(ShotFigures.speedAtBow(s), METRES_PER_FOOT)),
            Column.text(
                "judged_by",
                "rule, or person",
                s -> Optional.of(s.judgedByPerson() ? "person" : "rule")),
            Column.text(
                "entered",
                "by-gates, or by-hand when its speed was read off another display",
                s -> Optional.of(s.byGates().isPresent() ? "by-gates" : "by-hand")),
            Column.text("note", "what was noted with a speed entered by hand", ShotColumns::note));
  }

  public List<Column<Shot>> columns() {
    return columns;
  }

  /** A bow state is named by the day it began, or by the minute within one. */
  public static String stateName(Instant since, ZoneId zone) {
    var local = since.atZone(zone).toLocalDateTime();
    return local.toLocalTime().toSecondOfDay() == 0
        ? local.toLocalDate().toString()
        : local.withNano(0).toString();
  }

  private static Optional<String> note(Shot shot) {
    return shot.origin() instanceof Shot.ByHand hand && !hand.note().isEmpty()
        ? Optional.of(hand.note())
        : Optional.empty();
  }

  private static Optional<Double> value(Optional<Quantity> quantity, double unit) {
    return quantity.map(q -> q.value() / unit);
  }

  private static Optional<Double> value(OptionalDouble si, double unit) {
    return si.isPresent() ? Optional.of(si.getAsDouble() / unit) : Optional.empty();
  }

  private static Optional<Double> uncertainty(Optional<Quantity> quantity, double unit) {
    return quantity.map(q -> q.standardUncertainty() / unit);
  }
}
