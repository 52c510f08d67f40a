package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellShot;
import castwell.analysis.uncertainty.Quantity;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class DriftTest {
  private static Cell cell(String arrow, double[] hours, double[] speeds) {
    return of("bow", arrow, hours, speeds);
  }

  private static Cell of(String bow, String arrow, double[] hours, double[] speeds) {
    List<CellShot> shots = new ArrayList<>();
    for (int i = 0; i < hours.length; i++) {
      shots.add(new CellShot(arrow + i, hours[i] * 3600, speeds[i], 0, false));
    }
    return new Cell(new CellName(bow, "s", arrow, "day"), 0.03, Made.GATES, shots, List.of());
  }

  private static final List<Cell> CELLS =
      List.of(
          cell("a", new double[] {0, .3, .6, 1.1}, new double[] {50.1, 50.0, 49.6, 49.7}),
          cell("b", new double[] {.1, .5, .9}, new double[] {45.2, 45.3, 44.8}));

  /**
   * R 4.2.2: cell <- factor(c(1,1,1,1,2,2,2)); x <- c(0,.3,.6,1.1,.1,.5,.9); summary(lm(y ~ cell +
   * x))$coefficients["x", ]
   */
  @Test
  void trendAsInR() {
    Quantity trend = Drift.perHour(CELLS).orElseThrow();

    assertThat(trend.value()).isCloseTo(-0.438775510204079, within(1e-12));
    assertThat(trend.standardUncertainty()).isCloseTo(0.175927955607822, within(1e-12));
    assertThat(trend.pValue()).isCloseTo(0.0671916515982201, within(1e-12));
  }

  /** The same with x <- c(1,1,0,0,1,0,0), the first three shots of the session. */
  @Test
  void firstShotsAsInR() {
    Quantity first = Drift.firstShots(CELLS).orElseThrow();

    assertThat(first.value()).isCloseTo(0.299999999999999, within(1e-12));
    assertThat(first.pValue()).isCloseTo(0.124879825742907, within(1e-12));
  }

  /**
   * Holm's factor of two for the lesser p value of two bows; a bow that tells nothing is left out.
   */
  @Test
  void firstShotsOfAllBowsTogether() {
    List<Cell> cells = new ArrayList<>(CELLS);
    cells.add(
        of(
            "other",
            "c",
            new double[] {0, .1, .2, .3, .4},
            new double[] {40, 41, 40.5, 40.4, 40.6}));
    cells.add(of("single", "d", new double[] {0}, new double[] {40}));
    List<Drift.FirstShots> all = Drift.firstShotsByBow(cells);

    assertThat(all).extracting(Drift.FirstShots::bow).containsExactly("bow", "other");
    assertThat(all.get(0).differenceMps().pValue()).isCloseTo(0.124879825742907, within(1e-12));
    assertThat(all.get(0).adjustedP()).isCloseTo(2 * 0.124879825742907, within(1e-12));
  }

  @Test
  void oneShotACellTellsNoTrend() {
    assertThat(Drift.perHour(List.of(cell("a", new double[] {0}, new double[] {50})))).isEmpty();
  }

  /** As when a day's sheet gives a date and no hours. */
  @Test
  void shotsOfOneInstantTellNoTrend() {
    double hours = 1.7e9 / 3600;
    List<Cell> cells =
        List.of(cell("a", new double[] {hours, hours, hours}, new double[] {50.1, 50.0, 49.6}));

    assertThat(Drift.perHour(cells)).isEmpty();
  }

  /** Exact speeds of the model: 60 m/s or 45 m/s less 0.02 m/s per hour. */
  @Test
  void aHundredThousandShotsGiveBackTheirTrend() {
    double[] hours = new double[50_000];
    double[] fast = new double[hours.length];
    double[] slow = new double[hours.length];
    for (int i = 0; i < hours.length; i++) {
      hours[i] = i / 1e4;
      fast[i] = 60 - 0.02 * hours[i];
      slow[i] = 45 - 0.02 * hours[i];
    }
    List<Cell> cells = List.of(cell("a", hours, fast), cell("b", hours, slow));

    assertThat(Drift.perHour(cells).orElseThrow().value()).isCloseTo(-0.02, within(1e-9));
    assertThat(Drift.firstShots(cells)).isPresent();
  }
}
