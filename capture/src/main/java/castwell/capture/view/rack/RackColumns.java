package castwell.capture.view.rack;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_POUND;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.capture.store.ForceDraws.StoredPoint;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.view.Column;
import castwell.capture.view.StateName;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The columns of bow states, arrows and force-draw points, under the headings that an import reads.
 */
public final class RackColumns {
  public static final List<Column<Arrow>> ARROWS =
      List.of(
          Column.text("arrow", "its name", a -> Optional.of(a.name())),
          Column.number(
              "mass_gr", "grain", "as last weighed", a -> of(a.massKg(), KILOGRAMS_PER_GRAIN)),
          Column.number("length_in", "inch", "of the shaft", a -> of(a.lengthM(), METRES_PER_INCH)),
          Column.number(
              "diameter_in", "inch", "of the shaft", a -> of(a.diameterM(), METRES_PER_INCH)),
          Column.text("point", "what kind of point", Arrow::point),
          Column.text("note", "a person's words", Arrow::note));

  private RackColumns() {}

  /**
   * @param zone the time zone in which a state's date is told
   */
  public static List<Column<BowState>> bows(ZoneId zone) {
    return List.of(
        Column.text("bow", "its name", s -> Optional.of(s.bow())),
        Column.text(
            "state_on", "since when it is so", s -> Optional.of(StateName.of(s.since(), zone))),
        Column.number(
            "draw_weight_lb",
            "pound-force",
            "at the draw length",
            s -> of(s.drawWeightN(), NEWTONS_PER_POUND)),
        Column.number(
            "draw_length_in",
            "inch",
            "of the draw weight",
            s -> of(s.drawLengthM(), METRES_PER_INCH)),
        Column.number(
            "nock_to_nock_in",
            "inch",
            "length unstrung between the nocks",
            s -> of(s.measures().nockToNockM(), METRES_PER_INCH)),
        Column.number(
            "string_follow_in",
            "inch",
            "how far the unstrung tips stay behind the back",
            s -> of(s.measures().stringFollowM(), METRES_PER_INCH)),
        Column.number(
            "brace_height_in",
            "inch",
            "string to the grip",
            s -> of(s.measures().braceHeightM(), METRES_PER_INCH)),
        Column.number(
            "mass_lb", "pound", "of the bow", s -> of(s.measures().massKg(), KILOGRAMS_PER_POUND)),
        Column.text("wood", "of what it is made", s -> s.measures().wood()),
        Column.number(
            "tip_width_mm", "millimetre", "at the nocks", s -> of(s.measures().tipWidthM(), 1e-3)),
        Column.number(
            "string_mass_gr",
            "grain",
            "of the string",
            s -> of(s.measures().stringMassKg(), KILOGRAMS_PER_GRAIN)),
        Column.text(
            "done", "what was done to it", s -> Optional.of(s.done()).filter(d -> !d.isEmpty())));
  }

  /**
   * @param zone the time zone in which a state's date is told
   */
  public static List<Column<StoredPoint>> forceDraw(ZoneId zone) {
    return List.of(
        Column.text("bow", "its name", p -> Optional.of(p.bow())),
        Column.text(
            "state_on",
            "the state that was drawn",
            p -> Optional.of(StateName.of(p.stateSince(), zone))),
        Column.number(
            "draw_length_in",
            "inch",
            "nock groove to pivot point and 1 3/4 in",
            p -> of(p.point().drawLengthM(), METRES_PER_INCH)),
        Column.number(
            "draw_force_lb",
            "pound-force",
            "on the way out",
            p -> of(p.point().drawN(), NEWTONS_PER_POUND)),
        Column.number(
            "let_down_lb",
            "pound-force",
            "on the way back",
            p -> of(p.point().letDownN(), NEWTONS_PER_POUND)));
  }

  private static Optional<Double> of(double si, double unit) {
    return Optional.of(si / unit);
  }

  private static Optional<Double> of(OptionalDouble si, double unit) {
    return si.isPresent() ? of(si.getAsDouble(), unit) : Optional.empty();
  }
}
