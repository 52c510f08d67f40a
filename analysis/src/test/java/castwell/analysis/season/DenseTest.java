package castwell.analysis.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.season.SimulatedSeason.Errors;
import castwell.analysis.season.SimulatedSeason.Shot;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
  static List<SeasonCell> season(Random random, int sessions) {
    SimulatedSeason season =
        new SimulatedSeason(
            random, new Errors(0.006, 0.004, 0.003, 0.006, 0.002, 1), 3, 400, 470, 560, 600);
    for (int j = 0; j < sessions; j++) {
      Shot first = j < 2 ? Shot.of(0) : new Shot(0, "reworked", 0.01);
      Shot[] shots =
          random.nextBoolean() ? new Shot[] {first, Shot.of(1)} : new Shot[] {first, Shot.of(2)};
      season.session(1 + random.nextInt(5), shots);
    }
    return season.cells().stream()
        .filter(cell -> !cell.arrow().equals("arrow 3") || cell.state().equals("bow 0"))
        .toList();
  }

  /** Two, one of them not known for all sessions. */
  static List<Covariate> conditions(Random random, List<SeasonCell> cells) {
    Map<String, Double> celsius = new HashMap<>();
    Map<String, Double> percent = new HashMap<>();
    for (SeasonCell cell : cells) {
      celsius.computeIfAbsent(cell.session(), name -> 10 + 20 * random.nextDouble());
      percent.computeIfAbsent(cell.session(), name -> 8 + 6 * random.nextDouble());
    }
    celsius.put("one without cells", 5.0);
    percent.keySet().remove(cells.get(0).session());
    percent.putAll(Map.of("another", 9.0, "a third", 9.5));
    return List.of(Covariate.temperature(celsius), Covariate.woodMoisture(percent));
  }

  @Test
  void likelihoodEstimatesAndCovariance() {
    Random random = new Random(Seed.of(DenseTest.class));
    for (int i = 0; i < SEASONS; i++) {
      List<SeasonCell> cells = season(random, 6 + random.nextInt(3));
      Layout layout = new Layout(cells, i % 2 == 0 ? List.of() : conditions(random, cells));
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

  /**
   * The best linear prediction of each session's day and conditions from all cells (universal
   * kriging), at one place.
   */
  @Test
  void whatDaysDid() {
    Random random = new Random(Seed.of(DenseTest.class) + 1);
    for (int i = 0; i < SEASONS; i++) {
      List<SeasonCell> cells = season(random, 6);
      Layout layout = new Layout(cells, i % 2 == 0 ? List.of() : conditions(random, cells));
      Posterior posterior =
          Posterior.of(layout, Priors.ASSUMED, ShotSpread.of(layout, Priors.ASSUMED));
      double[] sds = {0.007, 0.003, 0.002};
      double[] place = {Math.log(sds[0]), Math.log(sds[1]), Math.log(sds[2])};
      VarianceGrid single = new VarianceGrid(new double[][] {place}, new double[] {1}, place);
      Dense dense = new Dense(layout, posterior, sds);
      List<SessionDays.Day> days =
          new SessionDays(posterior, single, posterior.at(place).step()).all();
      assertThat(days).hasSize(layout.sessions());
      for (int j = 0; j < days.size(); j++) {
        String session = days.get(j).session();
        RealVector covariances = dense.left.mapMultiply(0);
        RealVector wanted = dense.step.mapMultiply(0);
        double dayVariance = 0;
        for (int c = 0; c < layout.cells.length; c++) {
          SeasonCell cell = layout.cells[c];
          if (cell.session().equals(session)) {
            dayVariance = sds[0] * sds[0] + cell.setUpU() * cell.setUpU();
            covariances.setEntry(c, dayVariance);
            for (int v = 2 * layout.stateCount(); v < wanted.getDimension(); v++) {
              wanted.setEntry(v, dense.x.getEntry(c, v));
            }
          }
        }
        double explained = wanted.dotProduct(dense.step);
        RealVector weights = dense.inverse.operate(covariances);
        RealVector rest = wanted.subtract(dense.x.transpose().operate(weights));
        double variance =
            dayVariance
                - covariances.dotProduct(weights)
                + rest.dotProduct(dense.covariance.operate(rest));
        assertThat(days.get(j).explained()).isCloseTo(explained, within(1e-9));
        assertThat(days.get(j).effect().value())
            .isCloseTo(explained + weights.dotProduct(dense.left), within(1e-9));
        assertThat(days.get(j).effect().standardUncertainty())
            .isCloseTo(Math.sqrt(variance), within(1e-8));
      }
    }
  }

  /** Generalized least squares, the prior of e as so many more observations. */
  static final class Dense {
    final double logLikelihood;
    final RealVector step;
    final RealMatrix covariance;
    final RealMatrix x;
    final RealMatrix inverse;
    final RealVector left;

    Dense(Layout layout, Posterior posterior, double[] sds) {
      int n = layout.cells.length;
      int states = layout.stateCount();
      int conditions = layout.covariates.size();
      int rows = n + states + conditions;
      RealMatrix v = MatrixUtils.createRealMatrix(rows, rows);
      x = MatrixUtils.createRealMatrix(rows, 2 * states + conditions);
      RealVector y = MatrixUtils.createRealVector(new double[rows]);
      for (int c = 0; c < n; c++) {
        SeasonCell one = layout.cells[c];
        int state = layout.states.find(one.state());
        double mass = one.massKg() / layout.arrows.meanKg - 1;
        double e = posterior.tangent.beta[states + state];
        y.setEntry(c, one.meanLog() - posterior.tangent.beta[state] + Math.log(1 + e * mass) / 2);
        x.setEntry(c, state, 1);
        x.setEntry(c, states + state, -mass / 2 / (1 + e * mass));
        for (int i = 0; i < conditions; i++) {
          x.setEntry(c, 2 * states + i, aboveMean(layout.covariates.get(i), one.session()));
        }
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
      double priors = states * Math.log(0.15);
      for (int i = 0; i < conditions; i++) {
        x.setEntry(n + states + i, 2 * states + i, 1);
        v.setEntry(n + states + i, n + states + i, 0.002 * 0.002);
        priors += Math.log(0.002);
      }
      CholeskyDecomposition factor = new CholeskyDecomposition(v);
      inverse = factor.getSolver().getInverse();
      RealMatrix information = x.transpose().multiply(inverse).multiply(x);
      CholeskyDecomposition second = new CholeskyDecomposition(information, 1e-8, 1e-12);
      covariance = second.getSolver().getInverse();
      step = covariance.operate(x.transpose().operate(inverse.operate(y)));
      left = y.subtract(x.operate(step));
      double logs = Math.log(factor.getDeterminant()) + Math.log(second.getDeterminant());
      logLikelihood = -(logs + left.dotProduct(inverse.operate(left))) / 2 + priors;
    }

    private static double aboveMean(Covariate covariate, String session) {
      double mean =
          covariate.bySession().values().stream().mapToDouble(v -> v).average().orElseThrow();
      return covariate.bySession().getOrDefault(session, mean) - mean;
    }

    private static double massError(Layout layout, Posterior posterior, SeasonCell cell) {
      double mean = layout.arrows.meanKg;
      double e = posterior.tangent.beta[layout.stateCount() + layout.states.find(cell.state())];
      double virtual = mean / e - mean;
      return cell.massUKg() / (2 * (cell.massKg() + virtual));
    }
  }
}
