package castwell.capture.command;

import castwell.analysis.bow.ForceDrawCurve;
import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.analysis.speed.Calibration;
import castwell.analysis.unit.Units;
import castwell.analysis.wording.Phrase;
import castwell.capture.command.Refused.Why;
import castwell.capture.store.Rack.Measures;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a bow or an arrow can be; anything else is a slip of the pen. */
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

  /** Blank is not known. */
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

  static OptionalDouble arrowLengthM(OptionalDouble metres) {
    metres.ifPresent(
        m -> within("refused.what_arrows_length", m / Units.METRES_PER_INCH, 10, 45, "in"));
    return metres;
  }

  static OptionalDouble arrowDiameterM(OptionalDouble metres) {
    metres.ifPresent(
        m -> within("refused.what_arrows_diameter", m / Units.METRES_PER_INCH, 0.1, 1, "in"));
    return metres;
  }

  static Measures measures(Measures measures) {
    inches("refused.what_length_from_nock_to_nock", measures.nockToNockM(), 20, 90);
    inches("refused.what_string_follow", measures.stringFollowM(), -10, 15);
    inches("refused.what_brace_height", measures.braceHeightM(), 2, 15);
    measures.massKg().ifPresent(kg -> within("refused.what_bows_mass", kg, 0.1, 5, "kg"));
    measures.tipWidthM().ifPresent(m -> within("refused.what_tips_width", m * 1e3, 2, 60, "mm"));
    measures
        .stringMassKg()
        .ifPresent(
            kg ->
                within(
                    "refused.what_strings_mass", kg / Units.KILOGRAMS_PER_GRAIN, 10, 1000, "gr"));
    return new Measures(
        measures.nockToNockM(),
        measures.stringFollowM(),
        measures.braceHeightM(),
        measures.massKg(),
        words("refused.what_wood", measures.wood()),
        measures.tipWidthM(),
        measures.stringMassKg());
  }

  private static void inches(String what, OptionalDouble metres, double least, double most) {
    metres.ifPresent(m -> within(what, m / Units.METRES_PER_INCH, least, most, "in"));
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
