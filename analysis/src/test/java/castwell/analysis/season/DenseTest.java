package castwell.analysis.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.season.SimulatedSeason.Errors;
import castwell.analysis.season.SimulatedSeason.Shot;
import java.util.List;
import java.util.Random;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/**
 * The equations by blocks against one dense covariance matrix of all cells, with every error
 * written down as it is told, on random seasons.
 */
class DenseTest {
  private static final int SEASONS = 20;

  /** Some bows in each session, one of them reworked, and an arrow that only one bow shot. */
  private static List<SeasonCell> season(Random random) {
    SimulatedSeason season =
        new SimulatedSeason(
            random, new Errors(0.006, 0.004, 0.003, 0.006, 0.002, 1), 3, 400, 470, 560, 600);
    for (int j = 0; j < 2 + random.nextInt(4); j++) {
      Shot first = j < 2 ? Shot.of(0) : new Shot(0, "reworked", 0.01);
      Shot[] shots =
          random.nextBoolean() ? new Shot[] {first, Shot.of(1)} : new Shot[] {first, Shot.of(2)};
      season.session(1 + random.nextInt(5), shots);
    }
    return season.cells().stream()
        .filter(cell -> !cell.arrow().equals("arrow 3") || cell.state().equals("bow 0"))
        .toList();
  }

  @Test
  void likelihoodEstimatesAndCovariance() {
    Random random = new Random(Seed.of(DenseTest.class));
    for (int i = 0; i < SEASONS; i++) {
      Layout layout = new Layout(season(random));
      Posterior posterior =
          Posterior.of(layout, Priors.ASSUMED, ShotSpread.of(layout, Priors.ASSUMED));
      double[] sds = {
        0.002 + 0.01 * random.nextDouble(),
        0.001 + 0.008 * random.nextDouble(),
        0.001 + 0.005 * random.nextDouble()
      };
      Solution ours =
          posterior.at(new double[] {Math.log(sds[0]), Math.log(sds[1]), Math.log(sds[2])});
      Dense dense = new Dense(layout, posterior, sds);
      assertThat(ours.logLikelihood).isCloseTo(dense.logLikelihood, within(1e-7));
      double[] covariance = ours.covariance();
      double[] step = ours.step();
      for (int p = 0; p < step.length; p++) {
        assertThat(step[p]).isCloseTo(dense.step.getEntry(p), within(1e-9));
        for (int q = 0; q < step.length; q++) {
          double scale =
              Math.sqrt(dense.covariance.getEntry(p, p) * dense.covariance.getEntry(q, q));
          assertThat(covariance[p * step.length + q])
              .isCloseTo(dense.covariance.getEntry(p, q), within(1e-8 * scale));
        }
      }
    }
  }

  /** Generalized least squares, the prior of e as so many more observations. */
  private static final class Dense {
    private final double logLikelihood;
    private final RealVector step;
    private final RealMatrix covariance;

    Dense(Layout layout, Posterior posterior, double[] sds) {
      int n = layout.cells.length;
      int states = layout.stateCount();
      RealMatrix v = MatrixUtils.createRealMatrix(n + states, n + states);
      RealMatrix x = MatrixUtils.createRealMatrix(n + states, 2 * states);
      RealVector y = MatrixUtils.createRealVector(new double[n + states]);
      for (int c = 0; c < n; c++) {
        SeasonCell one = layout.cells[c];
        int state = layout.states.find(one.state());
        double mass = one.massKg() / layout.arrows.meanKg - 1;
        double e = posterior.tangent.beta[states + state];
        y.setEntry(c, one.meanLog() - posterior.tangent.beta[state] + Math.log(1 + e * mass) / 2);
        x.setEntry(c, state, 1);
        x.setEntry(c, states + state, -mass / 2 / (1 + e * mass));
        for (int d = 0; d < n; d++) {
          SeasonCell other = layout.cells[d];
          double both = 0;
          if (c == d) {
            both += posterior.spread.variance[layout.bow[c]] / one.shots();
          }
          if (one.session().equals(other.session())) {
            both += sds[0] * sds[0] + one.setUpU() * one.setUpU();
            both += one.bow().equals(other.bow()) ? sds[1] * sds[1] : 0;
          }
          if (one.arrow().equals(other.arrow())) {
            both += one.tune().equals(other.tune()) ? sds[2] * sds[2] : 0;
            both += massError(layout, posterior, one) * massError(layout, posterior, other);
          }
          v.setEntry(c, d, both);
        }
      }
      for (int s = 0; s < states; s++) {
        x.setEntry(n + s, states + s, 1);
        y.setEntry(n + s, 0.8 - posterior.tangent.beta[states + s]);
        v.setEntry(n + s, n + s, 0.15 * 0.15);
      }
      CholeskyDecomposition factor = new CholeskyDecomposition(v);
      RealMatrix inverse = factor.getSolver().getInverse();
      RealMatrix information = x.transpose().multiply(inverse).multiply(x);
      CholeskyDecomposition second = new CholeskyDecomposition(information, 1e-8, 1e-12);
      covariance = second.getSolver().getInverse();
      step = covariance.operate(x.transpose().operate(inverse.operate(y)));
      RealVector left = y.subtract(x.operate(step));
      double logs = Math.log(factor.getDeterminant()) + Math.log(second.getDeterminant());
      logLikelihood =
          -(logs + left.dotProduct(inverse.operate(left))) / 2 + states * Math.log(0.15);
    }

    private static double massError(Layout layout, Posterior posterior, SeasonCell cell) {
      double mean = layout.arrows.meanKg;
      double e = posterior.tangent.beta[layout.stateCount() + layout.states.find(cell.state())];
      double virtual = mean / e - mean;
      return cell.massUKg() / (2 * (cell.massKg() + virtual));
    }
  }
}
