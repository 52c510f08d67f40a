package castwell.analysis.outlier;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.outlier.PooledStrays.Findings;
import castwell.analysis.outlier.PooledStrays.Stray;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Sessions with several strays, and those where rounding could make some. */
@Tag("slow")
class StraysOneAfterAnotherTest {
  private static Findings find(List<double[]> cells) {
    return PooledStrays.find(cells, cells.stream().map(cell -> new boolean[cell.length]).toList());
  }

  /**
   * R 4.2.2: m = lm(v ~ cell), t = rstudent(m), p = n * 2 * pt(-abs(t), m$df.residual - 1) of the
   * largest |t|; then without that shot, until p > 0.01: it is 0.709 of the third.
   */
  @Test
  void theSecondShowsOnceTheFirstIsOut() {
    Findings findings =
        find(
            List.of(
                new double[] {50.1, 50.4, 49.8, 50.2, 50.0},
                new double[] {46.3, 46.1, 49.9, 46.4, 46.0, 46.2},
                new double[] {43.2, 43.0, 41.9, 43.1}));

    List<Stray> strays = findings.excluded();
    assertThat(strays).extracting(Stray::cell).containsExactly(1, 2);
    assertThat(strays).extracting(Stray::index).containsExactly(2, 2);
    assertThat(strays.get(0).studentized()).isCloseTo(9.46767684080442, within(1e-10));
    assertThat(strays.get(0).adjustedP()).isCloseTo(1.91023604910052e-05, within(1e-14));
    assertThat(strays.get(1).studentized()).isCloseTo(-5.80947501931112, within(1e-10));
    assertThat(strays.get(1).adjustedP()).isCloseTo(0.00239040837252148, within(1e-12));
    assertThat(findings.doubted()).isEmpty();
    assertThat(findings.degreesOfFreedom()).isEqualTo(10);
    assertThat(findings.pooledSd()).isCloseTo(0.178885438199984, within(1e-13));
  }

  /** Speeds by hand, in whole ft/s: their mean, rounded, must not set any of them apart. */
  @Test
  void equalShotsAreNoStraysHoweverManyCells() {
    List<double[]> cells = new ArrayList<>();
    for (int fps = 120; fps < 180; fps++) {
      double[] cell = new double[5];
      Arrays.fill(cell, fps * 0.3048);
      cells.add(cell);
    }

    Findings findings = find(cells);

    assertThat(findings.excluded()).isEmpty();
    assertThat(findings.doubted()).isEmpty();
    assertThat(findings.pooledSd()).isZero();
  }

  @Test
  @Timeout(300)
  void aThousandStraysAmongAHundredThousandShotsOfOneCell() {
    long seed = Seed.of(StraysOneAfterAnotherTest.class);
    double[] cell = new Random(seed).doubles(100_000, 49, 51).toArray();
    for (int i = 0; i < cell.length; i += 100) {
      cell[i] = 90;
    }

    Findings findings = find(List.of(cell));

    assertThat(findings.excluded()).as("seed %d", seed).hasSize(1000);
    assertThat(findings.excluded()).allMatch(stray -> stray.index() % 100 == 0);
  }
}
