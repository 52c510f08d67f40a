package castwell.analysis.season;

import castwell.analysis.bow.JointRegion;
import castwell.analysis.numeric.Contrast;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.TMixture;
import java.util.Optional;

/**
 * The energy E that a bow state hands over and the virtual mass K, with e = m / (m + K) at the
 * season's mean mass m, which holds for both: K = m (1 / e - 1), E = m exp(2 alpha) / (2 e).
 */
public final class StateEnergy {
  private static final double LEAST_E = 0.05;
  private static final double LEAST_VARIANCE = 1e-12;

  /** Nodes and weights of Gauss and Hermite's rule for a normal distribution (6 points). */
  private static final double[] NODES = {
    -3.324257433552119,
    -1.889175877753711,
    -0.6167065901925942,
    0.6167065901925942,
    1.889175877753711,
    3.324257433552119
  };

  private static final double[] NODE_WEIGHTS = {
    0.002555784402056246,
    0.08861574604191454,
    0.4088284695560293,
    0.4088284695560293,
    0.08861574604191454,
    0.002555784402056246
  };

  private final Season season;
  private final double meanKg;
  private final int alphaAt;
  private final int eAt;

  StateEnergy(Season season, Layout layout, int state) {
    this.season = season;
    meanKg = layout.arrows.meanKg;
    alphaAt = state;
    eAt = layout.stateCount() + state;
  }

  /** e, without a unit; a K below 0 is an e above 1. */
  public TMixture elasticity() {
    return season.contrast(byE(), 0, place -> 0);
  }

  private Contrast byE() {
    return Contrast.of(new int[] {eAt}, 1);
  }

  /** Whether the arrows' masses can split E from K: e is known twice as well as before any shot. */
  public boolean isSplit() {
    return elasticity().standardUncertainty() < season.eSd() / 2;
  }

  /**
   * K in kg; its upper end is infinite where e may be 0. A K below 0, which no bow has, is handed
   * on as it is. Empty where the masses can't split it from E.
   */
  public Optional<Estimate> virtualMassKg(double coverage) {
    TMixture e = elasticity();
    return isSplit()
        ? Optional.of(e.estimate(coverage).falling(this::virtualMass))
        : Optional.empty();
  }

  /**
   * K in kg as far as it is known, or else assumed, never below 0: for corrections that hardly
   * depend on it, not to be told.
   */
  public double likelyVirtualMassKg() {
    return virtualMass(Math.min(1, Math.max(LEAST_E, season.centre()[eAt])));
  }

  private double virtualMass(double e) {
    return e > 0 ? meanKg * (1 / e - 1) : Double.POSITIVE_INFINITY;
  }

  /**
   * The share of E that an arrow takes, m / (m + K), without a unit: 1 where K would be below 0.
   * Empty where the masses can't split E from K.
   */
  public Optional<Estimate> share(double massKg, double coverage) {
    return virtualMassKg(coverage).map(k -> k.falling(kg -> massKg / (massKg + Math.max(0, kg))));
  }

  /** E in J; empty where the masses can't split it from K. */
  public Optional<Estimate> energyJ(double coverage) {
    return isSplit()
        ? Optional.of(logEnergy().estimate(coverage).rising(Math::exp))
        : Optional.empty();
  }

  /** The natural log of E in J: over e by Gauss and Hermite's rule, with alpha normal at each e. */
  public TMixture logEnergy() {
    VarianceGrid grid = season.grid();
    int size = grid.size() * NODES.length;
    double[] mean = new double[size];
    double[] variance = new double[size];
    double[] degrees = new double[size];
    double[] weight = new double[size];
    double constant = Math.log(meanKg / 2);
    Contrast contrast = gradient();
    double shared = season.sharedVariance(contrast);
    double[] bySpread = season.bySpread(contrast);
    int rows = season.centre().length;
    for (int g = 0; g < grid.size(); g++) {
      double[] beta = season.beta(g);
      double[] v = season.covariance(g);
      double ofE = v[eAt * rows + eAt];
      double slope = v[alphaAt * rows + eAt] / ofE;
      double rest = v[alphaAt * rows + alphaAt] - slope * slope * ofE;
      double shots = season.degrees(contrast.variance(v, rows), bySpread);
      for (int n = 0; n < NODES.length; n++) {
        int at = g * NODES.length + n;
        double e = Math.max(LEAST_E, beta[eAt] + Math.sqrt(ofE) * NODES[n]);
        mean[at] = constant + 2 * (beta[alphaAt] + slope * (e - beta[eAt])) - Math.log(e);
        variance[at] = 4 * Math.max(rest, LEAST_VARIANCE) + shared;
        degrees[at] = shots;
        weight[at] = grid.weights()[g] * NODE_WEIGHTS[n];
      }
    }
    double[] centre = season.centre();
    double value = constant + 2 * centre[alphaAt] - Math.log(centre[eAt]);
    return new TMixture(value, mean, variance, degrees, weight);
  }

  private Contrast gradient() {
    return Contrast.of(new int[] {alphaAt, eAt}, 2, -1 / season.centre()[eAt]);
  }

  /** E and K together; empty where the masses can't split them. */
  public Optional<JointRegion> region(double coverage) {
    return isSplit()
        ? Optional.of(new EnergyRegion(season, meanKg, alphaAt, eAt).region(coverage))
        : Optional.empty();
  }

  /** How far ln E lies above that of another state: to first order, as a change is small. */
  public TMixture logEnergyLess(StateEnergy other) {
    double[] centre = season.centre();
    double difference =
        2 * (centre[alphaAt] - centre[other.alphaAt])
            - Math.log(centre[eAt])
            + Math.log(centre[other.eAt]);
    Contrast contrast = gradient().minus(other.gradient());
    return season.contrast(contrast, difference - contrast.of(centre), place -> 0);
  }

  /** How far e lies above that of another state. */
  public TMixture elasticityLess(StateEnergy other) {
    return season.contrast(byE().minus(other.byE()), 0, place -> 0);
  }

  /**
   * How far K lies above that of another state, in kg. Its interval holds 0 just where that of
   * {@link #elasticityLess} does: both e's are taken so far apart, about their own middle.
   */
  public Estimate virtualMassLessKg(StateEnergy other, double coverage) {
    double middle = (season.centre()[eAt] + season.centre()[other.eAt]) / 2;
    Interval e = elasticityLess(other).interval(coverage);
    double own = virtualMass(season.centre()[eAt]) - virtualMass(season.centre()[other.eAt]);
    return new Estimate(own, new Interval(apart(middle, e.high()), apart(middle, e.low())));
  }

  private double apart(double middle, double by) {
    return virtualMass(middle + by / 2) - virtualMass(middle - by / 2);
  }
}
