package castwell.capture.view.rack;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import castwell.capture.store.ForceDraws.StoredPoint;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.view.Column;
import castwell.capture.view.StateName;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The columns of bow states, arrows and force-draw points, under the headings that an import reads.
 */
public final class RackColumns {
  public static final List<Column<Arrow>> ARROWS =
      joined(
          List.of(
              Column.text("arrow", "its name", a -> Optional.of(a.name())),
              Column.number(
                  "mass_gr", "grain", "as last weighed", a -> of(a.massKg(), KILOGRAMS_PER_GRAIN))),
          measures(ArrowMeasure.values(), Arrow::measures),
          List.of());

  private RackColumns() {}

  /**
   * @param zone the time zone in which a state's date is told
   */
  public static List<Column<BowState>> bows(ZoneId zone) {
    return joined(
        List.of(
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
                s -> of(s.drawLengthM(), METRES_PER_INCH))),
        measures(BowMeasure.values(), BowState::measures),
        List.of(
            Column.text(
                "done",
                "what was done to it",
                s -> Optional.of(s.done()).filter(d -> !d.isEmpty()))));
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

  private static <R> List<Column<R>> joined(
      List<Column<R>> needed, List<Column<R>> measures, List<Column<R>> last) {
    return Stream.of(needed, measures, last).flatMap(List::stream).toList();
  }

  private static <R, M extends Enum<M> & Measure> List<Column<R>> measures(
      M[] catalogue, Function<R, Measures<M>> measures) {
    return Stream.of(catalogue).map(measure -> column(measure, measures)).toList();
  }

  private static <R, M extends Enum<M> & Measure> Column<R> column(
      M measure, Function<R, Measures<M>> measures) {
    String told = measure.entry().told();
    return measure
        .number()
        .map(number -> number.scale())
        .map(
            scale ->
                Column.<R>number(
                    measure.field(),
                    scale.unit(),
                    told,
                    row -> of(measures.apply(row).number(measure), scale.si())))
        .orElseGet(
            () -> Column.text(measure.field(), told, row -> measures.apply(row).words(measure)));
  }

  private static Optional<Double> of(double si, double unit) {
    return Optional.of(si / unit);
  }

  private static Optional<Double> of(OptionalDouble si, double unit) {
    return si.isPresent() ? of(si.getAsDouble(), unit) : Optional.empty();
  }
}
