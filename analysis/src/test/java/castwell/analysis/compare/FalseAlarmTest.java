package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.analysis.cell.Cell;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often a rework that did nothing is said to have done something, by a seeded simulation. */
@Tag("slow")
class FalseAlarmTest {
  private static final int REWORKS = 4000;
  private static final double SD_MPS = 0.3;

  /** What a simulation of this size may be off by: five standard errors of 5 %. */
  private static final double CHANCE = 0.018;

  private final long seed = Seed.of(FalseAlarmTest.class);
  private final Random random = new Random(seed);

  private double alarms(int controls, double betweenBowsMps) {
    int alarms = 0;
    for (int i = 0; i < REWORKS; i++) {
      List<Change> others = new ArrayList<>();
      for (int c = 0; c < controls; c++) {
        others.add(change("control " + c, betweenBowsMps));
      }
      Control control = Control.of(others.stream().map(Change::meanMps).toList());
      Conclusion conclusion =
          Conclusion.of(control.takenFrom(change("bow", betweenBowsMps).meanMps()));
      alarms += conclusion == Conclusion.CANT_TELL ? 0 : 1;
    }
    return (double) alarms / REWORKS;
  }

  /** A damp day takes 1 m/s from every bow, and from each something of its own. */
  private Change change(String bow, double betweenBowsMps) {
    double day = -1 + betweenBowsMps * random.nextGaussian();
    return Change.of(bow, cells(bow, "d1", 0), cells(bow, "d2", day)).orElseThrow();
  }

  private List<Cell> cells(String bow, String day, double shift) {
    List<Cell> cells = new ArrayList<>();
    for (double mass : new double[] {0.025, 0.035}) {
      double mean = 2 / mass / 1.5 + shift;
      double[] speeds = random.doubles(5).map(u -> mean + SD_MPS * random.nextGaussian()).toArray();
      cells.add(Made.cell(bow, "arrow of " + mass, day, mass, speeds));
    }
    return cells;
  }

  @Test
  void withoutAControlTheDayPassesForTheRework() {
    assertThat(alarms(0, 0)).as("seed %d", seed).isGreaterThan(0.9);
  }

  @Test
  void aDayThatIsAlikeForAllBowsIsTakenOut() {
    assertThat(alarms(1, 0)).as("one control, seed %d", seed).isLessThan(0.05 + CHANCE);
    assertThat(alarms(2, 0)).as("two controls, seed %d", seed).isLessThan(0.05 + CHANCE);
    assertThat(alarms(4, 0)).as("four controls, seed %d", seed).isLessThan(0.05 + CHANCE);
  }

  /** Days that differ between bows by about twice what a change scatters by. */
  @Test
  void everyControlMoreTellsBetterThatDaysDiffer() {
    double one = alarms(1, 0.25);
    double two = alarms(2, 0.25);
    double six = alarms(6, 0.25);

    assertThat(two).as("two controls, seed %d", seed).isLessThan(one);
    assertThat(six).as("six controls, seed %d", seed).isLessThan(two).isLessThan(0.10);
  }

  /** Days that are alike for all bows, and the usual few shots. */
  @Test
  void controlsThatAgreeAreSeldomSaidToDisagree() {
    for (int controls : new int[] {2, 3, 5}) {
      int alarms = 0;
      for (int i = 0; i < REWORKS; i++) {
        List<Change> others = new ArrayList<>();
        for (int c = 0; c < controls; c++) {
          others.add(change("control " + c, 0));
        }
        Control control = Control.of(others.stream().map(Change::meanMps).toList());
        alarms += control.agreementP() < 0.05 ? 1 : 0;
      }
      assertThat((double) alarms / REWORKS)
          .as("%d controls, seed %d", controls, seed)
          .isBetween(0.05 - CHANCE, 0.05 + CHANCE);
    }
  }

  /** Eight bows whose first shots are like their others. */
  @Test
  void firstShotsOfManyBowsAreSeldomSaidToBeOff() {
    int alarms = 0;
    for (int i = 0; i < REWORKS; i++) {
      List<Cell> cells = new ArrayList<>();
      for (int bow = 0; bow < 8; bow++) {
        cells.addAll(cells("bow " + bow, "d1", 0));
      }
      List<Drift.FirstShots> told = Drift.firstShotsByBow(cells);
      assertThat(told).hasSize(8);
      alarms += told.stream().anyMatch(first -> first.adjustedP() < 0.05) ? 1 : 0;
    }
    assertThat((double) alarms / REWORKS).as("seed %d", seed).isLessThan(0.05 + CHANCE);
  }
}
