package castwell.analysis.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.season.SimulatedSeason.Errors;
import castwell.analysis.season.SimulatedSeason.Shot;
import castwell.analysis.uncertainty.Interval;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A grid moved on by one session against one made anew. */
class BroughtUpToDateTest {
  private static final double MASS_KG = 0.032;
  private static final int A_SESSIONS_CELLS = 9;

  private static List<SeasonCell> cells(int sessions) {
    SimulatedSeason simulated =
        new SimulatedSeason(
            new Random(Seed.of(BroughtUpToDateTest.class)),
            new Errors(0.006, 0.004, 0.003, 0.006, 0.002, 1),
            4,
            400,
            470,
            560);
    for (int j = 0; j < sessions; j++) {
      simulated.session(5, Shot.of(j % 4), Shot.of((j + 1) % 4), Shot.of((j + 2) % 4));
    }
    return simulated.cells();
  }

  private static VarianceGrid before(List<SeasonCell> cells) {
    return Season.fit(cells.subList(0, cells.size() - A_SESSIONS_CELLS), Priors.ASSUMED).grid();
  }

  /** The shape is the old one's, the place the new one's, and answers are those of a new fit. */
  @Test
  void oneSessionMoreAmongManyMovesTheGrid() {
    List<SeasonCell> cells = cells(200);
    VarianceGrid before = before(cells);
    VarianceGrid moved = before.upTo(cells, List.of(), Priors.ASSUMED);
    Season anew = Season.fit(cells, Priors.ASSUMED);
    assertThat(moved.weights()).isEqualTo(before.weights());
    for (int g = 0; g < moved.size(); g++) {
      for (int p = 0; p < moved.mode().length; p++) {
        assertThat(moved.places()[g][p]).isCloseTo(anew.grid().places()[g][p], within(5e-3));
        assertThat(moved.places()[g][p] - moved.mode()[p])
            .isCloseTo(before.places()[g][p] - before.mode()[p], within(1e-12));
      }
    }
    assertThat(moved.mode()).containsExactly(anew.grid().mode(), within(5e-4));
    Season byMoved = Season.fit(cells, Priors.ASSUMED, moved);
    Interval told = byMoved.state("bow 1").logSpeed(MASS_KG).interval(0.95);
    Interval wanted = anew.state("bow 1").logSpeed(MASS_KG).interval(0.95);
    assertThat(told.low()).isCloseTo(wanted.low(), within(2e-3 * wanted.halfWidth()));
    assertThat(told.high()).isCloseTo(wanted.high(), within(2e-3 * wanted.halfWidth()));
  }

  @Test
  void oneSessionMoreAmongFewMakesItAnew() {
    List<SeasonCell> cells = cells(4);
    VarianceGrid before = before(cells);
    VarianceGrid upTo = before.upTo(cells, List.of(), Priors.ASSUMED);
    VarianceGrid anew = Season.fit(cells, List.of(), Priors.ASSUMED, before.mode()).grid();
    assertThat(upTo.weights()).isEqualTo(anew.weights());
    assertThat(upTo.mode()).isEqualTo(anew.mode());
  }
}
