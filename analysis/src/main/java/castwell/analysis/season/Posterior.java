package castwell.analysis.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/** What is believed of (ln D, ln W, ln A) after the season's shots, at any place. */
final class Posterior {
  private static final int MOST_STEPS = 30;
  private static final double SMALL = 1e-11;
  private static final double SPREAD_STEP = 0.02;
  private static final double LEAST_SHARE = 0.1;

  final Layout layout;
  final Priors priors;
  final ShotSpread spread;
  final Tangent tangent;
  private final BlockSums sums;
  private Information last;
  private double lastD = Double.NaN;
  private double lastW = Double.NaN;

  private Posterior(
      Layout layout, Priors priors, ShotSpread spread, Tangent tangent, double[] shift) {
    this.layout = layout;
    this.priors = priors;
    this.spread = spread;
    this.tangent = tangent;
    sums = new BlockSums(layout, spread.variance, tangent, shift);
  }

  static Posterior of(List<SeasonCell> cells, List<Covariate> covariates, Priors priors) {
    Layout layout = new Layout(cells, covariates);
    return of(layout, priors, ShotSpread.of(layout, priors));
  }

  /** The curves are made straight where Gauss and Newton's steps at the priors' medians end. */
  static Posterior of(Layout layout, Priors priors, ShotSpread spread) {
    double[] centre = priors.centre();
    double[] none = new double[layout.cells.length];
    double[] beta = start(layout, priors);
    for (int i = 0; i < MOST_STEPS; i++) {
      Posterior here = new Posterior(layout, priors, spread, new Tangent(layout, beta), none);
      double[] step = here.at(centre).step();
      shorten(layout, beta, step);
      double largest = 0;
      for (int p = 0; p < beta.length; p++) {
        beta[p] += step[p];
        largest = Math.max(largest, Math.abs(step[p]));
      }
      if (largest < SMALL) {
        break;
      }
    }
    return new Posterior(layout, priors, spread, new Tangent(layout, beta), none);
  }

  private static double[] start(Layout layout, Priors priors) {
    int states = layout.stateCount();
    double[] beta = new double[2 * states];
    double[] shots = new double[states];
    for (int c = 0; c < layout.cells.length; c++) {
      int s = layout.pairState[layout.pair[c]];
      beta[s] += layout.cells[c].shots() * layout.cells[c].meanLog();
      shots[s] += layout.cells[c].shots();
    }
    for (int s = 0; s < states; s++) {
      beta[s] /= shots[s];
      beta[states + s] = priors.eMean();
    }
    return beta;
  }

  private static void shorten(Layout layout, double[] beta, double[] step) {
    int states = layout.stateCount();
    for (int s = states; s < 2 * states; s++) {
      while (1 + (beta[s] + step[s]) * layout.leastX < LEAST_SHARE
          || 1 + (beta[s] + step[s]) * layout.mostX < LEAST_SHARE) {
        Arrays.setAll(step, p -> step[p] / 2);
      }
    }
  }

  /** The same with another spread of the shots, the curves straight at the same place. */
  private Posterior with(ShotSpread other) {
    return new Posterior(layout, priors, other, tangent, new double[layout.cells.length]);
  }

  /**
   * How the estimates move where so much is added to each cell's mean log speed.
   *
   * @param errors each of which adds so much to the cells, in the order in which they were given
   */
  List<double[]> responses(List<double[]> errors, double[] theta) {
    double[] before = at(theta).step();
    List<double[]> responses = new ArrayList<>();
    for (double[] shifts : errors) {
      double[] sorted = Arrays.stream(layout.given).mapToDouble(c -> shifts[c]).toArray();
      double[] step = new Posterior(layout, priors, spread, tangent, sorted).at(theta).step();
      Arrays.setAll(step, p -> step[p] - before[p]);
      responses.add(step);
    }
    return responses;
  }

  Solution at(double[] theta) {
    if (theta[0] != lastD || theta[1] != lastW) {
      lastD = theta[0];
      lastW = theta[1];
      last = new Information(layout, tangent, sums, Math.exp(lastD), Math.exp(lastW));
    }
    return new Solution(layout, tangent, priors, last, Math.exp(theta[2]));
  }

  double logDensity(double[] theta) {
    return at(theta).logLikelihood + priors.logDensity(theta);
  }

  /** By bow, how variances change with the log of the variance of its shots: by a step of 2 %. */
  double[][] bySpread(Function<Posterior, double[]> variances) {
    double[] here = variances.apply(this);
    double[][] derivatives = new double[layout.bows.size()][];
    for (int b = 0; b < derivatives.length; b++) {
      double[] there = variances.apply(with(spread.scaled(b, 1 + SPREAD_STEP)));
      for (int p = 0; p < here.length; p++) {
        there[p] = (there[p] - here[p]) / SPREAD_STEP;
      }
      derivatives[b] = there;
    }
    return derivatives;
  }
}
