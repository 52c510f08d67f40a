package castwell.analysis.bow;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Draw force against draw length, from brace height to full draw. Draw lengths are measured as the
 * trade does, from the nock groove to the grip's pivot point plus 1 3/4 in, so that the string
 * rests at brace height plus 1 3/4 in.
 */
public final class ForceDrawCurve {
  /** What the trade adds to the length from the pivot point. */
  public static final double BEYOND_PIVOT_M = 1.75 * Units.METRES_PER_INCH;

  /**
   * A curve stacks where it is this many times as steep as half-way (common practice, no source).
   */
  public static final double STACKS_AT = 1.5;

  private static final int STACK_STEPS = 400;

  /**
   * One point of the curve.
   *
   * @param drawLengthM the draw length, as the trade measures it
   * @param drawN the force on the way out
   * @param letDownN the force on the way back, where it was measured
   */
  public record Point(double drawLengthM, double drawN, OptionalDouble letDownN) {}

  private final List<Point> points;
  private final MonotoneCubic curve;

  private ForceDrawCurve(List<Point> points) {
    this.points = points;
    this.curve =
        new MonotoneCubic(lengths(points), points.stream().mapToDouble(Point::drawN).toArray());
  }

  /**
   * @param points the points in any order, no two at one length; at least three, counting the one
   *     at brace height
   * @param braceHeightM the distance from the string to the pivot point, where it is known; it adds
   *     a point without force, unless the points begin closer still or without force
   * @throws IllegalArgumentException when these can't be a curve
   */
  public static ForceDrawCurve of(List<Point> points, OptionalDouble braceHeightM) {
    List<Point> sorted = new ArrayList<>(points);
    sorted.sort(Comparator.comparingDouble(Point::drawLengthM));
    if (braceHeightM.isPresent() && !sorted.isEmpty()) {
      double rest = braceHeightM.getAsDouble() + BEYOND_PIVOT_M;
      if (sorted.get(0).drawN() > 0 && rest < sorted.get(0).drawLengthM()) {
        sorted.add(0, new Point(rest, 0, OptionalDouble.empty()));
      }
    }
    check(sorted);
    return new ForceDrawCurve(List.copyOf(sorted));
  }

  private static void check(List<Point> sorted) {
    if (sorted.size() < 3) {
      throw new IllegalArgumentException(
          "a force-draw curve needs three points at least, or two and the brace height");
    }
    for (int i = 0; i < sorted.size(); i++) {
      double length = sorted.get(i).drawLengthM();
      if (!(sorted.get(i).drawN() >= 0) || sorted.get(i).letDownN().orElse(0) < 0) {
        throw refused("the force at %.2f in is no number of at least 0; enter it anew", length);
      }
      if (i > 0 && !(length > sorted.get(i - 1).drawLengthM())) {
        throw refused("two points of the curve are at %.2f in; leave one out", length);
      }
    }
    Point last = sorted.get(sorted.size() - 1);
    if (last.drawN() == 0) {
      throw refused("at full draw, %.2f in, a bow holds some force; enter it", last.drawLengthM());
    }
  }

  private static IllegalArgumentException refused(String sentence, double drawLengthM) {
    return new IllegalArgumentException(
        String.format(Locale.ROOT, sentence, drawLengthM / Units.METRES_PER_INCH));
  }

  public List<Point> points() {
    return points;
  }

  /**
   * Whether the curve begins where the string rests; else the part below its first point is
   * missing.
   */
  public boolean isFromBrace() {
    return points.get(0).drawN() == 0;
  }

  /** Force at full draw, in N. */
  public double drawWeightN() {
    return last().drawN();
  }

  public double fullDrawM() {
    return last().drawLengthM();
  }

  /** The area under the monotone cubic through the points, in J. */
  public double storedEnergyJ() {
    return curve.integral();
  }

  /** The same area by the trapezoid rule, which comes out smaller for a curve that bulges. */
  public double trapezoidJ() {
    return trapezoid(points.stream().mapToDouble(Point::drawN).toArray());
  }

  /** Stored energy over draw weight, in J/N, that is in m. */
  public double energyPerDrawWeightM() {
    return storedEnergyJ() / drawWeightN();
  }

  /**
   * Stored energy over draw weight times the string's travel, without a unit: 0.5 for a straight
   * spring.
   */
  public double fullness() {
    return fullness(storedEnergyJ(), drawWeightN(), fullDrawM() - points.get(0).drawLengthM());
  }

  public static double fullness(double storedEnergyJ, double drawWeightN, double wayM) {
    return storedEnergyJ / (drawWeightN * wayM);
  }

  /**
   * The draw length from which the slope stays above {@link #STACKS_AT} times the slope half-way,
   * up to full draw; empty where the bow doesn't stack at full draw.
   */
  public OptionalDouble stacksAtM() {
    double from = points.get(0).drawLengthM();
    double way = fullDrawM() - from;
    double limit = STACKS_AT * curve.slopeAt(from + way / 2);
    int i = STACK_STEPS;
    while (i > STACK_STEPS / 2 && curve.slopeAt(from + way * i / STACK_STEPS) > limit) {
      i--;
    }
    return i == STACK_STEPS
        ? OptionalDouble.empty()
        : OptionalDouble.of(from + way * (i + 1) / STACK_STEPS);
  }

  /**
   * The share of the stored energy that is lost between the draw and the let-down; empty unless a
   * let-down force was measured at every point between the ends. At the ends it may be left out,
   * since the let-down begins with the force at full draw and ends with the one at brace height.
   */
  public OptionalDouble hysteresis() {
    double[] forces = points.stream().mapToDouble(point -> point.letDownN().orElse(-1)).toArray();
    int last = forces.length - 1;
    forces[0] = forces[0] < 0 ? points.get(0).drawN() : forces[0];
    forces[last] = forces[last] < 0 ? last().drawN() : forces[last];
    for (double force : forces) {
      if (force < 0) {
        return OptionalDouble.empty();
      }
    }
    double returned = new MonotoneCubic(lengths(points), forces).integral();
    return OptionalDouble.of((storedEnergyJ() - returned) / storedEnergyJ());
  }

  /** The arrow's kinetic energy over the stored energy, without a unit. */
  public Quantity efficiency(Quantity kineticEnergyJ) {
    return kineticEnergyJ.times(1 / storedEnergyJ());
  }

  /**
   * The virtual mass by the stored energy, 2 W / v2 - m, in kg. It counts everything that doesn't
   * reach the arrow, friction in the limbs too, so it isn't below the fit's.
   */
  public Quantity virtualMassKg(double arrowMassKg, Quantity speedMps) {
    return Quantity.exact(2 * storedEnergyJ())
        .dividedBy(speedMps.times(speedMps))
        .minus(Quantity.exact(arrowMassKg));
  }

  private Point last() {
    return points.get(points.size() - 1);
  }

  private double trapezoid(double[] forces) {
    double sum = 0;
    for (int i = 1; i < points.size(); i++) {
      double way = points.get(i).drawLengthM() - points.get(i - 1).drawLengthM();
      sum += way * (forces[i] + forces[i - 1]) / 2;
    }
    return sum;
  }

  private static double[] lengths(List<Point> points) {
    return points.stream().mapToDouble(Point::drawLengthM).toArray();
  }
}
