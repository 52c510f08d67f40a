package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.bow.DesignPrecision;
import castwell.analysis.compare.ShotOrder.Turn;
import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.statistic.TPower;
import castwell.analysis.uncertainty.StudentT;
import castwell.analysis.unit.Units;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlanTest {
  @Test
  void everyBlockHoldsEveryBowWithEveryArrowOnce() {
    List<Turn> order = ShotOrder.of(List.of("x", "y"), List.of("1", "2", "3"), 4, 7);

    assertThat(order).hasSize(24).doesNotHaveDuplicates();
    assertThat(order.subList(6, 12)).allMatch(turn -> turn.block() == 2);
    assertThat(order).isEqualTo(ShotOrder.of(List.of("x", "y"), List.of("1", "2", "3"), 4, 7));
    assertThat(order).isNotEqualTo(ShotOrder.of(List.of("x", "y"), List.of("1", "2", "3"), 4, 8));
  }

  /** Four cells, difference in differences: as often as promised, by a seeded simulation. */
  @Test
  void thePowerWithAControlIsKept() {
    long seed = Seed.of(PlanTest.class);
    Random random = new Random(seed);
    double n = Math.ceil(TPower.shotsEach(4, 2, 0.9, 0.05, 0.8));
    int found = 0;
    int repeats = 4000;
    for (int i = 0; i < repeats; i++) {
      double sum = 0;
      double squares = 0;
      for (int cell = 0; cell < 4; cell++) {
        double mean = cell == 3 ? 2 : 0;
        double[] shots =
            random.doubles((int) n).map(u -> mean + 0.9 * random.nextGaussian()).toArray();
        sum += (cell == 0 || cell == 3 ? 1 : -1) * Mean.of(shots);
        squares += Math.pow(StandardDeviation.of(shots), 2) / 4;
      }
      double t = sum / Math.sqrt(squares * 4 / n);
      found += StudentT.pValue(t, 4 * (n - 1)) < 0.05 ? 1 : 0;
    }
    double expected = TPower.of(4, n, 2, 0.9, 0.05);
    assertThat(expected).isGreaterThanOrEqualTo(0.8);
    assertThat((double) found / repeats).as("seed %d", seed).isCloseTo(expected, within(0.03));
  }

  /** sqrt of the weighted mean of variances, by hand: (4 x 1.44 + 2 x 2.25) / 6 = 1.71. */
  @Test
  void theSpreadIsPooledOverCells() {
    PooledSpread spread =
        PooledSpread.of(
            List.of(
                Made.cell("b", "a", "d", .03, Made.with(50, 1.2, 5)),
                Made.cell("b", "c", "d", .04, Made.with(40, 1.5, 3))));

    assertThat(spread.sdMps()).isCloseTo(Math.sqrt(1.71), within(1e-12));
    assertThat(spread.degreesOfFreedom()).isEqualTo(6);
  }

  @Test
  void massesAreTheEndsAndTheOneHalfWay() {
    MassChoice choice =
        MassChoice.of(List.of(.02, .024, .03, .036, .04, .05), .022, 40, .01, .3, 5).orElseThrow();

    assertThat(choice.massesKg()).containsExactly(.024, .036, .05);
    assertThat(choice.precision().virtualMassSe()).isPositive();
    assertThat(MassChoice.of(List.of(.02, .03), .01, 40, .01, .3, 5)).isEmpty();
  }

  @Test
  void anArrowOfJustTheLeastMassMayBeShot() {
    double leastKg = 8 * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP * (40 * Units.NEWTONS_PER_POUND);
    double lightKg = 320 * Units.KILOGRAMS_PER_GRAIN;

    assertThat(MassChoice.of(List.of(lightKg, .03, .04), leastKg, 40, .01, .3, 5)).isPresent();
  }

  /**
   * By trying every three arrows: two near one end tell K better, but test no curve. With masses up
   * to 2.5 times the lightest, and K half of that, the formula allows 1.23.
   */
  @Test
  void noThreeArrowsWouldTellTheVirtualMassMuchBetter() {
    long seed = Seed.of(PlanTest.class);
    Random random = new Random(seed);
    for (int i = 0; i < 200; i++) {
      List<Double> rack = random.doubles(8, 0.02, 0.05).boxed().toList();
      double best = Double.POSITIVE_INFINITY;
      for (int a = 0; a < 8; a++) {
        for (int b = 0; b < a; b++) {
          for (int c = 0; c < b; c++) {
            best = Math.min(best, virtualMassSe(rack.get(a), rack.get(b), rack.get(c)));
          }
        }
      }
      MassChoice choice = MassChoice.of(rack, 0, 40, .01, .3, 5).orElseThrow();
      assertThat(choice.precision().virtualMassSe() / best)
          .as("seed %d, rack %d", seed, i)
          .isBetween(1 - 1e-9, 1.25);
    }
  }

  private static double virtualMassSe(double... massesKg) {
    return DesignPrecision.of(40, .01, massesKg, new double[] {5, 5, 5}, .3).virtualMassSe();
  }
}
