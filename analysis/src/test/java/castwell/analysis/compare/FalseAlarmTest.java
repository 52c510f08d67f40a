package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.analysis.cell.Cell;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often something is said of shots of which nothing is so, by a seeded simulation. */
@Tag("slow")
class FalseAlarmTest {
  private static final int SESSIONS = 4000;
  private static final double SD_MPS = 0.3;

  /** What a simulation of this size may be off by: five standard errors of 5 %. */
  private static final double CHANCE = 0.018;

  private final long seed = Seed.of(FalseAlarmTest.class);
  private final Random random = new Random(seed);

  private List<Cell> cells(String bow) {
    List<Cell> cells = new ArrayList<>();
    for (double mass : new double[] {0.025, 0.035}) {
      double mean = 2 / mass / 1.5;
      double[] speeds = random.doubles(5).map(u -> mean + SD_MPS * random.nextGaussian()).toArray();
      cells.add(Made.cell(bow, "arrow of " + mass, "day", mass, speeds));
    }
    return cells;
  }

  /** Eight bows whose first shots are like their others. */
  @Test
  void firstShotsOfManyBowsAreSeldomSaidToBeOff() {
    int alarms = 0;
    for (int i = 0; i < SESSIONS; i++) {
      List<Cell> cells = new ArrayList<>();
      for (int bow = 0; bow < 8; bow++) {
        cells.addAll(cells("bow " + bow));
      }
      List<Drift.FirstShots> told = Drift.firstShotsByBow(cells);
      assertThat(told).hasSize(8);
      alarms += told.stream().anyMatch(first -> first.adjustedP() < 0.05) ? 1 : 0;
    }
    assertThat((double) alarms / SESSIONS).as("seed %d", seed).isLessThan(0.05 + CHANCE);
  }
}
