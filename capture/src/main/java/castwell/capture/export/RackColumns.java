package castwell.capture.export;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_POUND;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.capture.export.Column.Type;
import castwell.capture.store.ForceDraws.StoredPoint;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Bow states, arrows and force-draw points, by the headings that an import reads. */
public final class RackColumns {
  public static final List<Column<Arrow>> ARROWS =
      List.of(
          text("arrow", "its name", a -> Optional.of(a.name())),
          number("mass_gr", "grain", "as last weighed", a -> of(a.massKg(), KILOGRAMS_PER_GRAIN)),
          number("length_in", "inch", "of the shaft", a -> of(a.lengthM(), METRES_PER_INCH)),
          number("diameter_in", "inch", "of the shaft", a -> of(a.diameterM(), METRES_PER_INCH)),
          text("point", "what kind of point", Arrow::point),
          text("note", "a person's words", Arrow::note));

  private RackColumns() {}

  /**
   * @param zone in which a state's date is told
   */
  public static List<Column<BowState>> bows(ZoneId zone) {
    return List.of(
        text("bow", "its name", s -> Optional.of(s.bow())),
        text(
            "state_on",
            "since when it is so",
            s -> Optional.of(ShotColumns.stateName(s.since(), zone))),
        number(
            "draw_weight_lb",
            "pound-force",
            "at the draw length",
            s -> of(s.drawWeightN(), NEWTONS_PER_POUND)),
        number(
            "draw_length_in",
            "inch",
            "of the draw weight",
            s -> of(s.drawLengthM(), METRES_PER_INCH)),
        number(
            "nock_to_nock_in",
            "inch",
            "length unstrung between the nocks",
            s -> of(s.measures().nockToNockM(), METRES_PER_INCH)),
        number(
            "string_follow_in",
            "inch",
            "how far the unstrung tips stay behind the back",
            s -> of(s.measures().stringFollowM(), METRES_PER_INCH)),
        number(
            "brace_height_in",
            "inch",
            "string to the grip",
            s -> of(s.measures().braceHeightM(), METRES_PER_INCH)),
        number(
            "mass_lb", "pound", "of the bow", s -> of(s.measures().massKg(), KILOGRAMS_PER_POUND)),
        text("wood", "of what it is made", s -> s.measures().wood()),
        number(
            "tip_width_mm", "millimetre", "at the nocks", s -> of(s.measures().tipWidthM(), 1e-3)),
        number(
            "string_mass_gr",
            "grain",
            "of the string",
            s -> of(s.measures().stringMassKg(), KILOGRAMS_PER_GRAIN)),
        text("done", "what was done to it", s -> Optional.of(s.done()).filter(d -> !d.isEmpty())));
  }

  /**
   * @param zone in which a state's date is told
   */
  public static List<Column<StoredPoint>> forceDraw(ZoneId zone) {
    return List.of(
        text("bow", "its name", p -> Optional.of(p.bow())),
        text(
            "state_on",
            "the state that was drawn",
            p -> Optional.of(ShotColumns.stateName(p.stateSince(), zone))),
        number(
            "draw_length_in",
            "inch",
            "nock groove to pivot point and 1 3/4 in",
            p -> of(p.point().drawLengthM(), METRES_PER_INCH)),
        number(
            "draw_force_lb",
            "pound-force",
            "on the way out",
            p -> of(p.point().drawN(), NEWTONS_PER_POUND)),
        number(
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

  private static <R> Column<R> text(
      String name, String description, Function<R, Optional<?>> value) {
    return new Column<>(name, Type.STRING, "", description, value);
  }

  private static <R> Column<R> number(
      String name, String unit, String description, Function<R, Optional<?>> value) {
    return new Column<>(name, Type.NUMBER, unit, description, value);
  }
}
