package castwell.analysis.uncertainty;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Predicate;

/**
 * A value with its uncertainty budget, in SI units, propagated to first order.
 *
 * <p>Each source carries its signed contribution: sensitivity coefficient times standard
 * uncertainty, in the value's own unit. Sources are independent of one another, so a combined
 * variance is the sum of squares (JCGM 100:2008, 5.1.2); a source that enters twice adds up before
 * it is squared, which is how correlation is carried (5.2).
 */
public record Quantity(double value, Map<Source, Double> contributions) {

  public Quantity {
    // Unlike Map.copyOf this keeps the order given, so that sums come out alike in every run.
    contributions = Collections.unmodifiableMap(new LinkedHashMap<>(contributions));
  }

  /** A value taken as exactly known. */
  public static Quantity exact(double value) {
    return new Quantity(value, Map.of());
  }

  /**
   * A value that one source makes uncertain.
   *
   * @param standardUncertainty the standard uncertainty in the value's unit, at least 0
   * @throws IllegalArgumentException for one below 0 or NaN
   */
  public static Quantity of(double value, double standardUncertainty, Source source) {
    if (!(standardUncertainty >= 0)) {
      throw new IllegalArgumentException(
          "a standard uncertainty is at least 0, not " + standardUncertainty);
    }
    return new Quantity(value, Map.of(source, standardUncertainty));
  }

  public Quantity plus(Quantity other) {
    return combine(value + other.value, 1, other, 1);
  }

  public Quantity minus(Quantity other) {
    return combine(value - other.value, 1, other, -1);
  }

  public Quantity times(Quantity other) {
    return combine(value * other.value, other.value, other, value);
  }

  /** The quotient; a divisor of 0 gives an infinite or NaN value, as plain division does. */
  public Quantity dividedBy(Quantity other) {
    double quotient = value / other.value;
    return combine(quotient, 1 / other.value, other, -quotient / other.value);
  }

  public Quantity times(double factor) {
    return combine(value * factor, factor, exact(0), 0);
  }

  /** The square root: NaN of a value below 0; of 0 its uncertainty has no bound. */
  public Quantity squareRoot() {
    double root = Math.sqrt(value);
    return mapped(root, 0.5 / root);
  }

  /** A function of this quantity, given the function's value and derivative there. */
  public Quantity mapped(double newValue, double derivative) {
    return combine(newValue, derivative, exact(0), 0);
  }

  /** The combined standard uncertainty, 0 for an exact value. */
  public double standardUncertainty() {
    return rootSumSquares(source -> true);
  }

  /** The part of the standard uncertainty that comes from sources of this kind. */
  public double standardUncertainty(Kind kind) {
    return rootSumSquares(source -> source.kind() == kind);
  }

  /**
   * The effective degrees of freedom by Welch and Satterthwaite (JCGM 100:2008, G.4.1), with each
   * estimate of spread taken once; infinite when no source has a finite number of them. An
   * unbounded uncertainty has those of the source with the fewest.
   */
  public double effectiveDegreesOfFreedom() {
    Map<String, double[]> variances = new LinkedHashMap<>();
    double fewest = Double.POSITIVE_INFINITY;
    for (var entry : contributions.entrySet()) {
      double part = entry.getValue();
      double degrees = entry.getKey().degreesOfFreedom();
      variances.computeIfAbsent(entry.getKey().scatter(), s -> new double[] {0, degrees})[0] +=
          part * part;
      fewest = Math.min(fewest, degrees);
    }
    double variance = 0;
    double sum = 0;
    for (double[] scatter : variances.values()) {
      variance += scatter[0];
      sum += scatter[0] * scatter[0] / scatter[1];
    }
    if (Double.isInfinite(variance)) {
      return fewest;
    }
    return sum == 0 ? Double.POSITIVE_INFINITY : variance * variance / sum;
  }

  /** This quantity as if the sources of this kind were the only ones. */
  public Quantity only(Kind kind) {
    Map<Source, Double> kept = new LinkedHashMap<>(contributions);
    kept.keySet().removeIf(source -> source.kind() != kind);
    return new Quantity(value, kept);
  }

  /**
   * The interval that covers the true value with the given probability, by Student's t with the
   * effective degrees of freedom as they are (not truncated: the interval of R's t.test).
   *
   * @param coverage the probability, between 0 and 1, commonly 0.95
   */
  public Interval interval(double coverage) {
    double half = StudentT.twoSided(coverage, effectiveDegreesOfFreedom()) * standardUncertainty();
    return new Interval(value - half, value + half);
  }

  /**
   * The two-sided p value of the hypothesis that the true value is 0, by Student's t. For an exact
   * value it is 1 where the value is 0, else 0.
   */
  public double pValue() {
    double u = standardUncertainty();
    if (u == 0) {
      return value == 0 ? 1 : 0;
    }
    return StudentT.pValue(value / u, effectiveDegreesOfFreedom());
  }

  /**
   * The expanded uncertainty, half the width of the interval that covers the value with the given
   * probability (JCGM 100:2008, 6.2 and G.4.1, with degrees of freedom truncated to the next lower
   * integer).
   *
   * @param coverage the probability, between 0 and 1, commonly 0.95
   */
  public double expandedUncertainty(double coverage) {
    double degreesOfFreedom = Math.max(1, Math.floor(effectiveDegreesOfFreedom()));
    return StudentT.twoSided(coverage, degreesOfFreedom) * standardUncertainty();
  }

  private Quantity combine(double result, double weight, Quantity other, double otherWeight) {
    Map<Source, Double> sum = new LinkedHashMap<>();
    contributions.forEach((source, part) -> sum.put(source, part * weight));
    other.contributions.forEach(
        (source, part) -> sum.merge(source, part * otherWeight, Double::sum));
    return new Quantity(result, sum);
  }

  private double rootSumSquares(Predicate<Source> wanted) {
    double sum = 0;
    for (var entry : contributions.entrySet()) {
      if (wanted.test(entry.getKey())) {
        sum += entry.getValue() * entry.getValue();
      }
    }
    return Math.sqrt(sum);
  }
}
