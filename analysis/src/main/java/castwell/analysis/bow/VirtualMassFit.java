package castwell.analysis.bow;

import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.Optional;

/**
 * The virtual-mass model v = sqrt(2 E / (m + K)) (Klopsteg, Am. J. Phys. 11 (1943) 175), fitted to
 * shots by nonlinear least squares in v, as R's nls(v ~ sqrt(2 * E / (m + K))) does.
 *
 * <p>E, in J, is the energy that the bow hands over; K, in kg, is the virtual mass of limbs and
 * string. The covariance is s^2 (J'J)^-1 with J the model's derivatives at the solution. K may come
 * out below 0, although no bow's can be; it is then reported as it is, and never corrected.
 *
 * @param energyJ E, above 0
 * @param virtualMassKg K, above minus the lightest mass
 * @param energyVariance the variance of E, in J2
 * @param covariance the covariance of E and K, in J kg
 * @param virtualMassVariance the variance of K, in kg2
 * @param sumSquares the sum of the squared residuals, in m2/s2
 * @param degreesOfFreedom the number of shots less 2
 */
public record VirtualMassFit(
    double energyJ,
    double virtualMassKg,
    double energyVariance,
    double covariance,
    double virtualMassVariance,
    double sumSquares,
    int degreesOfFreedom,
    Repeats repeats) {

  private static final int MOST_STEPS = 200;
  private static final double SETTLED = 1e-13;

  /**
   * The fit to shots; empty with fewer than two masses, with fewer than three shots, or when no
   * such curve fits since heavier arrows weren't slower.
   *
   * @param massKg each shot's arrow mass, above 0
   * @param speedMps each shot's speed, above 0
   */
  public static Optional<VirtualMassFit> of(double[] massKg, double[] speedMps) {
    return of(Repeats.of(massKg, speedMps));
  }

  static Optional<VirtualMassFit> of(Repeats repeats) {
    if (repeats.masses() < 2 || repeats.shots() < 3) {
      return Optional.empty();
    }
    return start(repeats).flatMap(k -> settle(repeats, k));
  }

  /**
   * A first K, from the weighted straight line of 1/v2 on m. Var(1/v2) is near 4 s2 / v6, hence the
   * weights n v6.
   */
  private static Optional<Double> start(Repeats r) {
    double w = 0;
    double wm = 0;
    double wy = 0;
    for (int i = 0; i < r.masses(); i++) {
      double weight = weight(r, i);
      w += weight;
      wm += weight * r.massKg()[i];
      wy += weight * inverseSquare(r, i);
    }
    double mm = 0;
    double my = 0;
    for (int i = 0; i < r.masses(); i++) {
      double m = r.massKg()[i] - wm / w;
      mm += weight(r, i) * m * m;
      my += weight(r, i) * m * inverseSquare(r, i);
    }
    double slope = my / mm;
    double k = wy / w / slope - wm / w;
    return slope > 0 && k > -r.massKg()[0] ? Optional.of(k) : Optional.empty();
  }

  private static double weight(Repeats r, int i) {
    return r.count()[i] * Math.pow(r.meanMps()[i], 6);
  }

  private static double inverseSquare(Repeats r, int i) {
    return 1 / (r.meanMps()[i] * r.meanMps()[i]);
  }

  /**
   * Takes Gauss-Newton steps on K alone, since for any K the best sqrt(2 E) follows from a linear
   * regression (variable projection: Golub and Pereyra, SIAM J. Numer. Anal. 10 (1973) 413). A step
   * that doesn't help is halved.
   */
  private static Optional<VirtualMassFit> settle(Repeats r, double start) {
    Projection now = Projection.at(r, start);
    for (int i = 0; i < MOST_STEPS; i++) {
      double step = now.step();
      Projection next = Projection.at(r, now.k() + step);
      while (!(next.between() <= now.between())
          && Math.abs(step) > SETTLED * (r.massKg()[0] + Math.abs(now.k()))) {
        step /= 2;
        next = Projection.at(r, now.k() + step);
      }
      if (Math.abs(step) <= SETTLED * (r.massKg()[0] + Math.abs(now.k()))) {
        return Optional.of(now.fit(r));
      }
      now = next;
    }
    return Optional.empty();
  }

  public double residualSdMps() {
    return Math.sqrt(sumSquares / degreesOfFreedom);
  }

  public double energySe() {
    return Math.sqrt(energyVariance);
  }

  public double virtualMassSe() {
    return Math.sqrt(virtualMassVariance);
  }

  /** The correlation of E and K, -1 to 1; NaN of a fit without any residuals. */
  public double correlation() {
    return covariance / Math.sqrt(energyVariance * virtualMassVariance);
  }

  /**
   * E and K with their joint uncertainty, as two independent sources that rest on one estimate of
   * spread (the covariance's Cholesky factor), so that whatever is made of both carries their
   * correlation.
   *
   * @param name the name that tells this fit's sources from those of other fits
   */
  public VirtualMass quantities(String name) {
    String scatter = "fit of " + name;
    Source first = new Source(scatter + ", energy", Kind.OWN, degreesOfFreedom, scatter);
    Source second = new Source(scatter + ", virtual mass", Kind.OWN, degreesOfFreedom, scatter);
    double energySe = energySe();
    double along = energySe == 0 ? 0 : covariance / energySe;
    double across = Math.sqrt(Math.max(0, virtualMassVariance - along * along));
    return new VirtualMass(
        Quantity.of(energyJ, energySe, first),
        Quantity.exact(virtualMassKg)
            .plus(Quantity.of(0, 1, first).times(along))
            .plus(Quantity.of(0, across, second)));
  }
}
