package castwell.web.report.rework;

import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.DISTANCE;
import static castwell.web.unit.Dimension.FORCE;

import castwell.analysis.compare.Conditions;
import castwell.analysis.compare.Conditions.Difference;
import castwell.analysis.compare.Conditions.What;
import castwell.capture.command.Alike;
import castwell.capture.measure.BowMeasure;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.capture.store.Weather.Air;
import castwell.capture.view.InUnits;
import castwell.capture.view.report.rework.ConditionView;
import castwell.capture.word.Rounded;
import castwell.web.report.BowCells;
import castwell.web.report.ReportFormat;
import castwell.web.unit.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** What else differed between before and after. */
final class ConditionRows {
  private ConditionRows() {}

  static List<ConditionView> of(BowCells bowCells, Reworked reworked, ReportFormat format) {
    Side before = reworked.sides().before();
    Side after = reworked.sides().after();
    List<ConditionView> rows = new ArrayList<>();
    double drawn = after.state().drawWeightN() - before.state().drawWeightN();
    if (drawn != 0) {
      rows.add(
          row(
              "draw weight",
              format.say("report.rework.draw_weight", format.plain(FORCE, 1, drawn)),
              OptionalDouble.empty()));
    }
    for (BowMeasure measure : BowMeasure.values()) {
      changed(measure, before.state(), after.state(), format).ifPresent(rows::add);
    }
    double virtualMassKg = reworked.rework().before().energy().likelyVirtualMassKg();
    conditions(bowCells, after)
        .since(conditions(bowCells, before), reworked.massKg(), virtualMassKg)
        .forEach(difference -> rows.add(row(difference, reworked.isAtBow(), format)));
    return rows;
  }

  /** Of a measure that is told of a rework, where it is known of both states. */
  private static Optional<ConditionView> changed(
      BowMeasure measure, BowState before, BowState after, ReportFormat format) {
    OptionalDouble was = before.measures().number(measure);
    OptionalDouble is = after.measures().number(measure);
    return measure
        .number()
        .filter(number -> measure.entry().isToldOfRework())
        .filter(number -> was.isPresent() && is.isPresent() && !Alike.are(was, is))
        .map(number -> Dimension.of(number.scale()))
        .map(
            dimension ->
                row(
                    measure.stem().replace('_', ' '),
                    format.say(
                        "report.rework.measure",
                        format.say(measure.label()),
                        format.speech().plain(dimension, was),
                        format.speech().plain(dimension, is)),
                    OptionalDouble.empty()));
  }

  /** Their means over the sessions nearest to the rework. */
  private static Conditions conditions(BowCells bowCells, Side side) {
    Transaction t = bowCells.transaction();
    List<Air> airs = side.nearest().stream().map(t.weather()::ofSession).toList();
    return new Conditions(
        mean(side.nearest().stream().map(t.sessions()::gatesFromBowM)),
        mean(airs.stream().map(Air::celsius)),
        mean(airs.stream().map(Air::relativeHumidity)),
        side.state().measures().number(BowMeasure.STRING_MASS));
  }

  private static OptionalDouble mean(Stream<OptionalDouble> known) {
    return known.flatMapToDouble(OptionalDouble::stream).average();
  }

  private static ConditionView row(Difference difference, boolean isAtBow, ReportFormat format) {
    String what = difference.what().name().toLowerCase(Locale.ROOT);
    String key = "report.rework." + what;
    if (isAtBow && difference.what() == What.GATES) {
      return row(what, format.say("report.rework.gates_taken_out"), OptionalDouble.empty());
    }
    if (difference.by().isEmpty()) {
      return row(what, format.say(key + "_unknown"), OptionalDouble.empty());
    }
    double by = difference.by().getAsDouble();
    String words =
        format.say(
            key + (by > 0 ? "_more" : "_less"),
            amount(difference.what(), Math.abs(by), format),
            String.format(Locale.ROOT, "%+.1f", 100 * difference.relativeSpeed().getAsDouble()));
    return row(what, words, difference.relativeSpeed());
  }

  private static String amount(What what, double by, ReportFormat format) {
    return switch (what) {
      case GATES -> format.plain(DISTANCE, 2, by);
      case TEMPERATURE, MOISTURE -> Rounded.to(1, by);
      case STRING -> format.plain(ARROW_MASS, 0, by);
    };
  }

  private static ConditionView row(String what, String sentence, OptionalDouble relative) {
    return new ConditionView(what, sentence, InUnits.of(relative, 0.01));
  }
}
