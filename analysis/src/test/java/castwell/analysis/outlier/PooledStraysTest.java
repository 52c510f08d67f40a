package castwell.analysis.outlier;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.outlier.PooledStrays.Findings;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is found, and how often, in sessions made by a seeded generator. */
class PooledStraysTest {
  private static final int SESSIONS = 4_000;

  private final long seed = Long.getLong("castwell.seed", System.nanoTime());
  private final Random random = new Random(seed);

  private List<double[]> cells(int count, int shots) {
    List<double[]> cells = new ArrayList<>();
    for (int c = 0; c < count; c++) {
      double mean = 40 + 5 * c;
      cells.add(random.doubles(shots).map(u -> mean + random.nextGaussian()).toArray());
    }
    return cells;
  }

  private static Findings find(List<double[]> cells) {
    return PooledStrays.find(cells, cells.stream().map(cell -> new boolean[cell.length]).toList());
  }

  @Test
  void cleanSessionsSeldomLoseAShot() {
    int losing = 0;
    for (int i = 0; i < SESSIONS; i++) {
      losing += find(cells(3, 5)).excluded().isEmpty() ? 0 : 1;
    }
    System.out.printf("PooledStraysTest seed %d: %d of %d lose one%n", seed, losing, SESSIONS);
    assertThat(losing).as("seed %d", seed).isLessThan(SESSIONS * 2 / 100);
  }

  @Test
  void aShotFarOffIsCaught() {
    int caught = 0;
    for (int i = 0; i < SESSIONS; i++) {
      List<double[]> cells = cells(3, 5);
      cells.get(1)[2] = 45 - 8;
      caught +=
          find(cells).excluded().stream().anyMatch(s -> s.cell() == 1 && s.index() == 2) ? 1 : 0;
    }
    System.out.printf("PooledStraysTest seed %d: %d of %d caught%n", seed, caught, SESSIONS);
    assertThat(caught).as("seed %d", seed).isGreaterThan(SESSIONS * 93 / 100);
  }

  @Test
  void aShotThatAPersonBroughtBackStaysAndIsDoubted() {
    List<double[]> cells = cells(3, 5);
    cells.get(1)[2] = 20;
    List<boolean[]> kept = cells.stream().map(cell -> new boolean[cell.length]).toList();
    kept.get(1)[2] = true;

    Findings findings = PooledStrays.find(cells, kept);

    assertThat(findings.excluded()).isEmpty();
    assertThat(findings.doubted()).extracting(s -> s.cell(), s -> s.index()).hasSize(1);
  }

  @Test
  void withFewerThanEightDegreesOfFreedomAStrayIsOnlyDoubted() {
    List<double[]> cells = cells(2, 4);
    cells.get(1)[2] = -1000;

    Findings findings = find(cells);

    assertThat(findings.degreesOfFreedom()).isEqualTo(6);
    assertThat(findings.excluded()).isEmpty();
    assertThat(findings.doubted()).hasSize(1);
  }

  @Test
  void atMostAQuarterOfACellGoes() {
    List<double[]> cells = cells(4, 7);
    cells.get(0)[0] = 4000;
    cells.get(0)[1] = -3000;

    Findings findings = find(cells);

    assertThat(findings.excluded()).hasSize(1);
    assertThat(findings.doubted()).hasSize(1);
  }

  @Test
  void aLoneShotInItsCellIsNeverJudged() {
    List<double[]> cells = cells(3, 5);
    cells.add(new double[] {500});

    assertThat(find(cells).excluded()).noneMatch(stray -> stray.cell() == 3);
  }
}
