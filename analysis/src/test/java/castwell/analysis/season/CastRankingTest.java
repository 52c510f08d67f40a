package castwell.analysis.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.compare.CastRanking;
import castwell.analysis.compare.CastRanking.Bow;
import castwell.analysis.compare.CastRanking.Entry;
import castwell.analysis.compare.CastRanking.Pair;
import castwell.analysis.season.SimulatedSeason.Errors;
import castwell.analysis.season.SimulatedSeason.Shot;
import castwell.analysis.uncertainty.TMixture;
import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * What a ranking tells must agree with itself, and with the season it is of; with {@code
 * -Dcastwell.repeats=N} over more seasons.
 */
class CastRankingTest {
  private static final Errors ERRORS = new Errors(0.006, 0.003, 0.002, 0.006, 0.002, 1);
  private static final int BOWS = 5;
  private static final int SEASONS = Integer.getInteger("castwell.repeats", 40);
  private static final double WEIGHT_N = 50 * Units.NEWTONS_PER_POUND;

  private static String name(int bow) {
    return "bow " + bow;
  }

  /**
   * @param spread how many times their own differences the bows' log speeds at 500 gr differ
   */
  private static Season season(Random random, double spread) {
    SimulatedSeason simulated = new SimulatedSeason(random, ERRORS, BOWS, 400, 470, 560);
    Shot[] shots = new Shot[BOWS];
    for (int b = 0; b < BOWS; b++) {
      double apart = simulated.logSpeed(b, 500) - simulated.logSpeed(0, 500);
      shots[b] = new Shot(b, name(b), (spread - 1) * apart);
    }
    for (int j = 0; j < 3; j++) {
      simulated.session(4, shots);
    }
    return Season.fit(simulated.cells(), Priors.ASSUMED);
  }

  private static List<Bow> bows(Season season, double scaleU) {
    List<Bow> bows = new ArrayList<>();
    for (int b = 0; b < BOWS; b++) {
      bows.add(new Bow(name(b), season.state(name(b)), WEIGHT_N, scaleU * WEIGHT_N));
    }
    return bows;
  }

  /** Whatever the p values are: bows much alike, somewhat alike, as unlike as they are made. */
  @Test
  void anIntervalLeavesOutZeroJustWhereAPairIsToldApart() {
    Random random = new Random(Seed.of(CastRankingTest.class));
    int apart = 0;
    int alike = 0;
    for (int i = 0; i < SEASONS; i++) {
      Season season = season(random, i % 4 * 0.1);
      CastRanking ranking = CastRanking.of(bows(season, 0.004), 10);
      assertThat(ranking.pairs()).hasSize(BOWS * (BOWS - 1) / 2);
      for (Pair pair : ranking.pairs()) {
        assertThat(pair.share().interval().contains(0)).isEqualTo(!pair.differs());
        assertThat(pair.differenceMps().interval().contains(0)).isEqualTo(!pair.differs());
        assertThat(pair.differenceMps().value()).isNotNegative();
        assertThat(pair.differenceMps().value())
            .isCloseTo(mps(ranking, pair.faster()) - mps(ranking, pair.slower()), within(1e-9));
        boolean together =
            ranking.groups().stream()
                .anyMatch(group -> group.containsAll(List.of(pair.faster(), pair.slower())));
        assertThat(together && pair.differs()).isFalse();
        apart += pair.differs() ? 1 : 0;
        alike += pair.differs() ? 0 : 1;
      }
    }
    assertThat(Math.min(apart, alike)).isGreaterThan(SEASONS);
  }

  private static double mps(CastRanking ranking, String bow) {
    return ranking.bows().stream()
        .filter(entry -> entry.bow().equals(bow))
        .mapToDouble(entry -> entry.castMps(0.95).value())
        .findFirst()
        .orElseThrow();
  }

  /** At most one of twenty such seasons may have any pair told apart, and what chance adds. */
  @Test
  void bowsThatAreAlikeAreSeldomToldApart() {
    Random random = new Random(Seed.of(CastRankingTest.class) + 1);
    int told = 0;
    for (int i = 0; i < SEASONS; i++) {
      CastRanking ranking = CastRanking.of(bows(season(random, 0), 0), 10);
      told += ranking.pairs().stream().anyMatch(Pair::differs) ? 1 : 0;
    }
    System.out.printf(
        "| any two of %d equal bows told apart | %.1f %% |%n", BOWS, 100.0 * told / SEASONS);
    double expected = 0.05 * SEASONS;
    assertThat(told).isLessThan((int) (expected + 3 * Math.sqrt(0.95 * expected)) + 1);
  }

  /** Heavier bows' casts are with heavier arrows; two scales' errors add as squares. */
  @Test
  void castsAtTheirOwnWeightsWithTheScalesErrors() {
    Season season = season(new Random(Seed.of(CastRankingTest.class) + 2), 1);
    StateCurve one = season.state(name(0));
    StateCurve other = season.state(name(1));
    double heavierN = 1.1 * WEIGHT_N;
    TMixture exact = one.castLess(10, WEIGHT_N, 0, other, heavierN, 0);
    double kg = 500 * Units.KILOGRAMS_PER_GRAIN;
    TMixture byMass = one.lessThan(kg, other, 1.1 * kg);
    assertThat(exact.value()).isCloseTo(byMass.value(), within(1e-12));
    assertThat(exact.pValue()).isCloseTo(byMass.pValue(), within(1e-9));
    TMixture weighed =
        one.castLess(10, WEIGHT_N, 0.01 * WEIGHT_N, other, heavierN, 0.02 * heavierN);
    double more = variance(weighed) - variance(exact);
    double ofOne =
        variance(one.cast(10, WEIGHT_N, 0.01 * WEIGHT_N)) - variance(one.cast(10, WEIGHT_N, 0));
    double ofOther =
        variance(other.cast(10, heavierN, 0.02 * heavierN)) - variance(other.cast(10, heavierN, 0));
    assertThat(more).isCloseTo(ofOne + ofOther, within(1e-12));
  }

  private static double variance(TMixture told) {
    return told.standardUncertainty() * told.standardUncertainty();
  }

  @Test
  void fastestFirstAndNoBowsAreNoGroups() {
    Season season = season(new Random(Seed.of(CastRankingTest.class) + 3), 1);
    List<Entry> entries = CastRanking.of(bows(season, 0.01), 10).bows();
    for (int i = 1; i < entries.size(); i++) {
      assertThat(entries.get(i).logCast().value())
          .isLessThanOrEqualTo(entries.get(i - 1).logCast().value());
    }
    assertThat(CastRanking.of(List.of(), 10).groups()).isEmpty();
  }
}
