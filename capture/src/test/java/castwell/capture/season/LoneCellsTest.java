package castwell.capture.season;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.air.AtBow;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellSums;
import castwell.analysis.cell.SetUp;
import castwell.analysis.season.Priors;
import castwell.analysis.season.Season;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Shots that nothing in their session can judge are judged by all other days. */
class LoneCellsTest {
  private static final double USUAL_MPS = 45;

  private static CellSums cell(String session, String bow, double massKg, int n, double mps) {
    double squares = (n - 1) * 0.1;
    return new CellSums(
        new CellName(bow, "new", "arrow " + massKg, session),
        massKg,
        new SetUp("gates", 0.002),
        n,
        mps,
        squares,
        mps,
        mps,
        0,
        0,
        AtBow.NOT_KNOWN);
  }

  private static List<CellSums> threeDays() {
    List<CellSums> cells = new ArrayList<>();
    for (String day : List.of("one", "two", "three")) {
      for (double massKg : new double[] {0.026, 0.032, 0.038}) {
        double mps = USUAL_MPS * Math.sqrt((0.032 + 0.008) / (massKg + 0.008));
        cells.add(cell(day, "Wych", massKg, 4, mps));
      }
    }
    return cells;
  }

  private static List<CellSums> strays(List<CellSums> cells) {
    return LoneCells.strays(
        cells,
        sums -> new SeasonCells(sums, cell -> cell.name().bow(), List.of()).cells(),
        taken -> Season.fit(taken, Priors.ASSUMED));
  }

  @Test
  void aLoneShotThatAllOtherDaysSpeakAgainstIsLeftOut() {
    List<CellSums> cells = threeDays();
    cells.add(cell("four", "Wych", 0.032, 1, USUAL_MPS * 1.1));
    assertThat(strays(cells)).containsExactly(cells.get(cells.size() - 1));
  }

  @Test
  void aLoneShotOfAnOrdinarilyFastDayCounts() {
    List<CellSums> cells = threeDays();
    cells.add(cell("four", "Wych", 0.032, 1, USUAL_MPS * 1.015));
    assertThat(strays(cells)).isEmpty();
  }

  @Test
  void whereItsSessionHasAWholeCellThatJudges() {
    List<CellSums> cells = threeDays();
    cells.add(cell("four", "Wych", 0.032, 3, USUAL_MPS * 1.1));
    cells.add(cell("four", "Wych", 0.038, 1, USUAL_MPS));
    assertThat(strays(cells)).isEmpty();
  }

  @Test
  void aBowThatNoOtherDayTellsOfIsBelieved() {
    List<CellSums> cells = threeDays();
    cells.add(cell("four", "Osier", 0.032, 1, USUAL_MPS * 1.3));
    assertThat(strays(cells)).isEmpty();
  }

  @Test
  void whereAllSessionsAreAloneAllAreBelieved() {
    List<CellSums> cells =
        List.of(
            cell("one", "Wych", 0.032, 1, USUAL_MPS),
            cell("two", "Wych", 0.032, 2, USUAL_MPS * 1.2));
    assertThat(strays(cells)).isEmpty();
  }
}
