package castwell.analysis.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.bow.Reach;
import castwell.analysis.bow.Target;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.TMixture;
import castwell.analysis.unit.Units;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Three seasons as an independent program in R reckoned them, numbers in resources/season: one
 * session of one bow; three bows in several sessions; a bow before and after a rework with two
 * controls.
 */
class SeasonAgainstRTest {
  private static final double MASS_KG = 500 * Units.KILOGRAMS_PER_GRAIN;
  private static final double RELATIVE = 1e-6;
  private static final Map<String, Season> FITS = new HashMap<>();

  private static Season fit(String season) {
    return FITS.computeIfAbsent(
        season, name -> Season.fit(new Expected(name).cells(), Priors.ASSUMED));
  }

  private static Offset<Double> close(double value) {
    return within(RELATIVE * Math.abs(value) + 1e-12);
  }

  @ParameterizedTest
  @CsvSource({
    "one-session, 0.005;0.003;0.002",
    "one-session, 0.01;0.002;0.001",
    "three-bows, 0.005;0.003;0.002",
    "three-bows, 0.01;0.002;0.001",
    "rework, 0.005;0.003;0.002",
    "rework, 0.01;0.002;0.001"
  })
  void oneSolution(String season, String at) {
    Expected expected = new Expected(season);
    Layout layout = new Layout(expected.cells(), List.of());
    Posterior posterior =
        Posterior.of(layout, Priors.ASSUMED, ShotSpread.of(layout, Priors.ASSUMED));
    double[] theta =
        Arrays.stream(at.split(";")).mapToDouble(Double::parseDouble).map(Math::log).toArray();
    Solution solution = posterior.at(theta);
    assertThat(solution.logLikelihood).isCloseTo(expected.of("at", at, "likelihood"), within(1e-7));
    double[] step = solution.step();
    double[] covariance = solution.covariance();
    for (int p = 0; p < step.length; p++) {
      String number = Integer.toString(p + 1);
      assertThat(posterior.tangent.beta[p] + step[p])
          .isCloseTo(expected.of("at", at, "beta" + number), within(1e-8));
      double se = expected.of("at", at, "se" + number);
      assertThat(covariance[p * step.length + p]).isCloseTo(se * se, within(1e-7 * se * se));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"one-session", "three-bows", "rework"})
  void modeAndGrid(String season) {
    Expected expected = new Expected(season);
    VarianceGrid grid = fit(season).grid();
    List<String> names = List.of("D", "W", "A");
    for (int i = 0; i < names.size(); i++) {
      double mode = expected.of("mode", "all", names.get(i));
      assertThat(Math.exp(grid.mode()[i])).isCloseTo(mode, close(mode));
    }
    double largest = expected.of("weight", "all", "largest");
    assertThat(Arrays.stream(grid.weights()).max().orElseThrow())
        .isCloseTo(largest, close(largest));
  }

  @ParameterizedTest
  @CsvSource({
    "one-session, ash",
    "three-bows, b1/1",
    "three-bows, b2/1",
    "rework, before",
    "rework, after"
  })
  void whatABowDoes(String season, String state) {
    Expected expected = new Expected(season);
    StateCurve curve = fit(season).state(state);
    double massKg = MASS_KG;
    alike(expected, "speed", state, curve.logSpeed(massKg), 0.95);
    alike(expected, "nextDay", state, curve.nextDay(massKg, 0.002, Double.POSITIVE_INFINITY), 0.95);
    alike(expected, "nextFive", state, curve.nextDay(massKg, 0.002, 5), 0.95);
    StateEnergy energy = curve.energy();
    alike(expected, "e", state, energy.elasticity(), 0.95);
    alike(expected, "energy", state, energy.logEnergy(), 0.95);
    Estimate k = energy.virtualMassKg(0.95).orElseThrow();
    grains(expected, "K", state, "value", k.value());
    grains(expected, "K", state, "low", k.interval().low());
    grains(expected, "K", state, "high", k.interval().high());
    Reach reach = curve.reach(new Target.KineticEnergy(Quantity.exact(32)), 0.95);
    grains(expected, "reach", state, "value", reach.massKg().orElseThrow());
    grains(expected, "reach", state, "low", reach.intervalKg().low());
    grains(expected, "reach", state, "high", reach.intervalKg().high());
  }

  @ParameterizedTest
  @CsvSource({
    "three-bows, difference, b1/1, b2/1, 0.95",
    "three-bows, difference, b1/1, b3/1, 0.95",
    "rework, difference, after, before, 0.95",
    "rework, difference90, after, before, 0.90"
  })
  void howTwoDiffer(String season, String what, String one, String other, double coverage) {
    Season fit = fit(season);
    TMixture difference = fit.state(one).lessThan(MASS_KG, fit.state(other), MASS_KG);
    alike(new Expected(season), what, one + "-" + other, difference, coverage);
  }

  @ParameterizedTest
  @ValueSource(strings = {"rework"})
  void whatMoved(String season) {
    StateEnergy after = fit(season).state("after").energy();
    StateEnergy before = fit(season).state("before").energy();
    Expected expected = new Expected(season);
    alike(expected, "elasticity", "after-before", after.elasticityLess(before), 0.95);
    TMixture energy = after.logEnergyLess(before);
    alike(expected, "logEnergy", "after-before", energy, 0.95);
    assertThat(energy.value())
        .isCloseTo(after.logEnergy().value() - before.logEnergy().value(), within(1e-12));
  }

  private static void alike(
      Expected expected, String what, String of, TMixture told, double coverage) {
    Interval interval = told.interval(coverage);
    double[] ours = {
      told.value(),
      told.standardUncertainty(),
      interval.low(),
      interval.high(),
      told.degreesOfFreedom()
    };
    List<String> names = List.of("value", "u", "low", "high", "degrees");
    for (int i = 0; i < ours.length; i++) {
      double theirs = expected.of(what, of, names.get(i));
      assertThat(ours[i])
          .as("%s of %s, %s", what, of, names.get(i))
          .isCloseTo(theirs, close(theirs));
    }
    assertThat(told.below(interval.low())).isCloseTo((1 - coverage) / 2, within(1e-9));
    assertThat(told.above(interval.high())).isCloseTo((1 - coverage) / 2, within(1e-9));
  }

  /** NaN is what the program in R says of an end below the lightest arrow looked at. */
  private static void grains(Expected expected, String what, String of, String name, double kg) {
    double theirs = expected.of(what, of, name);
    if (Double.isNaN(theirs)) {
      assertThat(kg).as("%s of %s, %s", what, of, name).isZero();
    } else {
      assertThat(kg / Units.KILOGRAMS_PER_GRAIN)
          .as("%s of %s, %s", what, of, name)
          .isCloseTo(theirs, within(2 * RELATIVE * Math.abs(theirs)));
    }
  }
}
