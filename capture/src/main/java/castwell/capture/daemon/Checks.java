package castwell.capture.daemon;

import castwell.analysis.bow.ForceDrawCurve;
import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.analysis.speed.Calibration;
import castwell.analysis.unit.Units;
import castwell.capture.daemon.Refused.Why;
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
      throw new Refused(
          Why.INVALID,
          "%s needs a name of 1 to %d characters, on one line.".formatted(what, LONGEST_NAME));
    }
    return trimmed;
  }

  public static String text(String what, String text) {
    if (text.length() > LONGEST_TEXT) {
      throw new Refused(
          Why.INVALID,
          "%s may have %d characters at most, not %d."
              .formatted(what, LONGEST_TEXT, text.length()));
    }
    return text.strip();
  }

  /** Blank is not known. */
  static Optional<String> words(String what, Optional<String> text) {
    return text.map(words -> text(what, words)).filter(words -> !words.isEmpty());
  }

  static double drawWeightN(double newtons) {
    within("A draw weight", newtons / Units.NEWTONS_PER_POUND, 1, 250, "lb");
    return newtons;
  }

  static double drawLengthM(double metres) {
    within("A draw length", metres / Units.METRES_PER_INCH, 8, 40, "in");
    return metres;
  }

  static double arrowMassKg(double kilograms) {
    within("An arrow's mass", kilograms / Units.KILOGRAMS_PER_GRAIN, 50, 5000, "gr");
    return kilograms;
  }

  static OptionalDouble arrowLengthM(OptionalDouble metres) {
    metres.ifPresent(m -> within("An arrow's length", m / Units.METRES_PER_INCH, 10, 45, "in"));
    return metres;
  }

  static OptionalDouble arrowDiameterM(OptionalDouble metres) {
    metres.ifPresent(m -> within("An arrow's diameter", m / Units.METRES_PER_INCH, 0.1, 1, "in"));
    return metres;
  }

  static Measures measures(Measures measures) {
    inches("A length from nock to nock", measures.nockToNockM(), 20, 90);
    inches("A string follow", measures.stringFollowM(), -10, 15);
    inches("A brace height", measures.braceHeightM(), 2, 15);
    measures.massKg().ifPresent(kg -> within("A bow's mass", kg, 0.1, 5, "kg"));
    measures.tipWidthM().ifPresent(m -> within("A tip's width", m * 1e3, 2, 60, "mm"));
    measures
        .stringMassKg()
        .ifPresent(kg -> within("A string's mass", kg / Units.KILOGRAMS_PER_GRAIN, 10, 1000, "gr"));
    return new Measures(
        measures.nockToNockM(),
        measures.stringFollowM(),
        measures.braceHeightM(),
        measures.massKg(),
        words("A wood", measures.wood()),
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
        throw new Refused(
            Why.INVALID,
            "Point %d, at %s in, isn't longer than the one before it: a curve's points stand in the order of their lengths."
                .formatted(i + 1, plain(length / Units.METRES_PER_INCH)));
      }
    }
    try {
      ForceDrawCurve.of(points, OptionalDouble.empty());
    } catch (IllegalArgumentException e) {
      throw new Refused(Why.INVALID, "This can't be: %s.".formatted(e.getMessage()));
    }
  }

  public static void point(Point point) {
    drawLengthM(point.drawLengthM());
    within("A draw force", point.drawN() / Units.NEWTONS_PER_POUND, 0, 250, "lb");
    point
        .letDownN()
        .ifPresent(n -> within("A let-down force", n / Units.NEWTONS_PER_POUND, 0, 250, "lb"));
  }

  static void gates(Instant from, Optional<Instant> to, Calibration gates) {
    within("A gate spacing", gates.spacingM() * 1e3, 50, 10_000, "mm");
    within("A gate spacing's uncertainty", gates.spacingUM() * 1e3, 0, 100, "mm");
    within("A trigger scatter", gates.triggerScatterM() * 1e3, 0, 50, "mm");
    within("The gates' distance from the bow", gates.gatesFromBowM(), 0, 100, "m");
    if (to.isPresent() && !to.get().isAfter(from)) {
      throw new Refused(
          Why.INVALID, "A calibration ends after it begins, not at %s.".formatted(to.get()));
    }
  }

  private static void within(String what, double value, double least, double most, String unit) {
    if (!(value >= least && value <= most)) {
      throw new Refused(
          Why.INVALID,
          String.format(
              Locale.ROOT,
              "%s lies between %s and %s %s, not at %s: mend it and send it again.",
              what,
              plain(least),
              plain(most),
              unit,
              plain(value)));
    }
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e9
        ? String.valueOf((long) value)
        : String.format(Locale.ROOT, "%.4g", value);
  }
}
