package castwell.capture.command;

import castwell.analysis.bow.ForceDrawCurve;
import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.analysis.speed.Calibration;
import castwell.analysis.unit.Units;
import castwell.analysis.wording.Phrase;
import castwell.capture.command.Refused.Why;
import castwell.capture.measure.Entry;
import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Refuses values that no bow or arrow can have; they are slips of the pen. */
public final class Checks {
  private static final int LONGEST_NAME = 60;
  private static final int LONGEST_TEXT = 500;

  private Checks() {}

  public static String name(String what, String name) {
    String trimmed = name.strip();
    if (trimmed.isEmpty()
        || trimmed.length() > LONGEST_NAME
        || trimmed.chars().anyMatch(Character::isISOControl)) {
      throw Refused.of(Why.INVALID, "refused.name", Phrase.of(what), LONGEST_NAME);
    }
    return trimmed;
  }

  public static String text(String what, String text) {
    if (text.length() > LONGEST_TEXT) {
      throw Refused.of(
          Why.INVALID, "refused.too_long", Phrase.of(what), LONGEST_TEXT, text.length());
    }
    return text.strip();
  }

  /** The words without blanks around them; blank ones aren't known. */
  static Optional<String> words(String what, Optional<String> text) {
    return text.map(words -> text(what, words)).filter(words -> !words.isEmpty());
  }

  static double drawWeightN(double newtons) {
    within("refused.what_draw_weight", newtons / Units.NEWTONS_PER_POUND, 1, 250, "lb");
    return newtons;
  }

  static double drawLengthM(double metres) {
    within("refused.what_draw_length", metres / Units.METRES_PER_INCH, 8, 40, "in");
    return metres;
  }

  static double arrowMassKg(double kilograms) {
    within("refused.what_arrows_mass", kilograms / Units.KILOGRAMS_PER_GRAIN, 50, 5000, "gr");
    return kilograms;
  }

  /**
   * @param catalogue every measure that there is
   */
  static <M extends Enum<M> & Measure> Measures<M> measures(M[] catalogue, Measures<M> told) {
    Measures<M> measures = told.completed(catalogue);
    return Measures.of(
        catalogue,
        measure -> within(measure, measures.number(measure)),
        measure -> words(measure.refusal(), measures.words(measure)));
  }

  private static OptionalDouble within(Measure measure, OptionalDouble si) {
    Entry.Number number = measure.number().orElseThrow();
    si.ifPresent(
        value ->
            within(
                measure.refusal(),
                number.inLimitsUnit(value),
                number.least(),
                number.most(),
                number.limitsUnit()));
    return si;
  }

  static void forceDraw(List<Point> points) {
    points.forEach(Checks::point);
    for (int i = 1; i < points.size(); i++) {
      double length = points.get(i).drawLengthM();
      if (!(length > points.get(i - 1).drawLengthM())) {
        throw Refused.of(
            Why.INVALID, "refused.points_order", i + 1, plain(length / Units.METRES_PER_INCH));
      }
    }
    try {
      ForceDrawCurve.of(points, OptionalDouble.empty());
    } catch (IllegalArgumentException e) {
      throw Refused.of(Why.INVALID, "refused.cant_be", e.getMessage());
    }
  }

  public static void point(Point point) {
    drawLengthM(point.drawLengthM());
    within("refused.what_draw_force", point.drawN() / Units.NEWTONS_PER_POUND, 0, 250, "lb");
    point
        .letDownN()
        .ifPresent(
            n -> within("refused.what_let_down_force", n / Units.NEWTONS_PER_POUND, 0, 250, "lb"));
  }

  static void gates(Instant from, Optional<Instant> to, Calibration gates) {
    within("refused.what_gate_spacing", gates.spacingM() * 1e3, 50, 10_000, "mm");
    within("refused.what_gate_spacings_uncertainty", gates.spacingUM() * 1e3, 0, 100, "mm");
    within("refused.what_trigger_scatter", gates.triggerScatterM() * 1e3, 0, 50, "mm");
    within("refused.what_gates_distance_from_the_bow", gates.gatesFromBowM(), 0, 100, "m");
    if (to.isPresent() && !to.get().isAfter(from)) {
      throw Refused.of(Why.INVALID, "refused.calibration_ends", to.get());
    }
  }

  private static void within(String what, double value, double least, double most, String unit) {
    if (!(value >= least && value <= most)) {
      throw Refused.of(
          Why.INVALID,
          "refused.within",
          Phrase.of(what),
          plain(least),
          plain(most),
          unit,
          plain(value));
    }
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e9
        ? String.valueOf((long) value)
        : String.format(Locale.ROOT, "%.4g", value);
  }
}
