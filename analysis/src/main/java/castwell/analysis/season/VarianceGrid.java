package castwell.analysis.season;

import castwell.analysis.numeric.ModeSearch;
import castwell.analysis.numeric.NearbyMode;
import java.util.Arrays;
import java.util.List;

/**
 * What a season told of D, W and A: 125 places about the posterior's mode, each with its weight (as
 * Rue, Martino and Chopin, J. R. Statist. Soc. B 71 (2009) 319; from memory). It can be kept, and
 * serve for a few bows of the same season without a look at all others.
 *
 * @param places ln D, ln W, ln A, by place; those with the same D and W come together
 * @param weights adding up to 1
 * @param mode ln D, ln W, ln A where the posterior is highest: where the next search may begin
 */
public record VarianceGrid(double[][] places, double[] weights, double[] mode) {
  /** The log of a standard deviation that is next to none. */
  private static final double NOTHING = Math.log(1e-6);

  private static final double[] STEPS = {-2.4, -1.2, 0, 1.2, 2.4};

  /** What is assumed before any session. */
  public static VarianceGrid assumed(Priors priors) {
    double[] centre = priors.centre();
    double[][] factor = {
      {priors.day().logSd(), 0, 0}, {0, priors.bowDay().logSd(), 0}, {0, 0, priors.arrow().logSd()}
    };
    double[][] places = about(new ModeSearch.Mode(centre, factor));
    double[] logs = Arrays.stream(places).mapToDouble(priors::logDensity).toArray();
    return new VarianceGrid(places, weights(logs), centre);
  }

  /**
   * The grid once some more cells have come: moved as a whole to where the posterior is highest
   * now, if its shape holds to 1 %, which one session more among many leaves it; otherwise made
   * anew.
   *
   * @param cells all of the season
   */
  public VarianceGrid upTo(List<SeasonCell> cells, List<Covariate> covariates, Priors priors) {
    Posterior posterior = Posterior.of(cells, covariates, priors);
    return NearbyMode.of(posterior::logDensity, new ModeSearch.Mode(mode, factor()))
        .map(this::movedTo)
        .orElseGet(() -> Season.fit(cells, covariates, priors, mode).grid());
  }

  private VarianceGrid movedTo(double... to) {
    double[][] moved = new double[places.length][];
    for (int g = 0; g < moved.length; g++) {
      moved[g] = places[g].clone();
      for (int i = 0; i < to.length; i++) {
        moved[g][i] += to[i] - mode[i];
      }
    }
    return new VarianceGrid(moved, weights, to);
  }

  /** Of what it was made with, told by the places one step from the middle on each axis. */
  private double[][] factor() {
    int middle = places.length / 2;
    double[][] factor = new double[mode.length][mode.length];
    int away = 1;
    for (int j = mode.length - 1; j >= 0; j--) {
      for (int i = 0; i < mode.length; i++) {
        factor[i][j] = (places[middle + away][i] - mode[i]) / STEPS[STEPS.length / 2 + 1];
      }
      away *= STEPS.length;
    }
    return factor;
  }

  /** A single place, where days, bows' days and arrows differ by next to nothing. */
  static VarianceGrid ofNothing() {
    double[] place = {NOTHING, NOTHING, NOTHING};
    return new VarianceGrid(new double[][] {place}, new double[] {1}, place);
  }

  /** The places, not yet weighed. */
  static double[][] about(ModeSearch.Mode mode) {
    double[][] places = new double[STEPS.length * STEPS.length * STEPS.length][];
    int at = 0;
    for (double d : STEPS) {
      for (double w : STEPS) {
        for (double a : STEPS) {
          places[at++] = place(mode, d, w, a);
        }
      }
    }
    return places;
  }

  private static double[] place(ModeSearch.Mode mode, double... z) {
    double[] place = mode.place().clone();
    for (int i = 0; i < place.length; i++) {
      for (int j = 0; j <= i; j++) {
        place[i] += mode.factor()[i][j] * z[j];
      }
    }
    return place;
  }

  static double[] weights(double[] logDensity) {
    double most = Arrays.stream(logDensity).max().orElseThrow();
    double[] weights = new double[logDensity.length];
    double sum = 0;
    for (int g = 0; g < weights.length; g++) {
      weights[g] = Math.exp(logDensity[g] - most);
      sum += weights[g];
    }
    for (int g = 0; g < weights.length; g++) {
      weights[g] /= sum;
    }
    return weights;
  }

  /** The weighted mean of what is so at each place. */
  double[] mean(double[][] values) {
    double[] mean = new double[values[0].length];
    for (int g = 0; g < values.length; g++) {
      for (int p = 0; p < mean.length; p++) {
        mean[p] += weights[g] * values[g][p];
      }
    }
    return mean;
  }

  public int size() {
    return weights.length;
  }

  /** The standard deviation of a bow's log speed from day to day, over all places. */
  public double otherDay() {
    double variance = 0;
    for (int g = 0; g < weights.length; g++) {
      variance += weights[g] * (day(g) * day(g) + bowDay(g) * bowDay(g));
    }
    return Math.sqrt(variance);
  }

  /** D at a place: the relative standard deviation of days. */
  public double day(int place) {
    return Math.exp(places[place][0]);
  }

  /** W at a place: that of a bow's own days. */
  public double bowDay(int place) {
    return Math.exp(places[place][1]);
  }
}
