package castwell.analysis.outlier;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class StrayChancesTest {
  private static final int SHOTS = 50_000;
  private static final int FEWER = 5_000;

  private static List<double[]> chances(List<double[]> cells) {
    return StrayChances.of(cells, kept(cells), 0);
  }

  private static List<boolean[]> kept(List<double[]> cells) {
    return cells.stream().map(cell -> new boolean[cell.length]).toList();
  }

  private record Known(double logSpeed, double chance) {}

  /** Ten bows, cells of 1 to 12 shots, as an independent program in R reckoned their chances. */
  @Test
  void asReckonedInR() throws IOException {
    Map<String, Map<String, List<Known>>> bows = new LinkedHashMap<>();
    try (InputStream in = StrayChancesTest.class.getResourceAsStream("/season/strays.csv")) {
      new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(line -> line.split(","))
          .forEach(
              row ->
                  bows.computeIfAbsent(row[0], bow -> new LinkedHashMap<>())
                      .computeIfAbsent(row[1], arrow -> new ArrayList<>())
                      .add(
                          new Known(
                              Math.log(Double.parseDouble(row[3])), Double.parseDouble(row[4]))));
    }
    assertThat(bows).hasSize(10);
    for (var bow : bows.values()) {
      List<List<Known>> cells = List.copyOf(bow.values());
      List<double[]> ours =
          chances(
              cells.stream()
                  .map(cell -> cell.stream().mapToDouble(Known::logSpeed).toArray())
                  .toList());
      for (int c = 0; c < cells.size(); c++) {
        for (int i = 0; i < ours.get(c).length; i++) {
          double theirs = cells.get(c).get(i).chance();
          assertThat(ours.get(c)[i]).isCloseTo(theirs, within(1e-8 * theirs + 1e-12));
        }
      }
    }
  }

  @Test
  void inCellsOfOneAndTwoNoneCanBeTold() {
    List<double[]> told =
        chances(List.of(new double[] {3.9, 3.5}, new double[] {3.9}, new double[0]));
    assertThat(told.get(0)).containsExactly(0, 0);
    assertThat(told.get(1)).containsExactly(0);
    assertThat(told.get(2)).isEmpty();
  }

  @Test
  void oneThatWasBroughtBackIsNone() {
    List<double[]> cells =
        List.of(new double[] {3.9, 3.82, 3.901}, new double[] {3.8, 3.801, 3.799});
    assertThat(chances(cells).get(0)[1]).isGreaterThan(0.99);
    List<double[]> told =
        StrayChances.of(cells, List.of(new boolean[] {false, true, false}, new boolean[3]), 0);
    assertThat(told.get(0)[1]).isZero();
  }

  /** Speeds in whole feet per second, as sure as that: a rectangle one wide (JCGM 100:2008). */
  @Test
  void oneStepOfADisplayIsNoStrayWhereHardlyAShotDiffers() {
    double[][] alike = new double[60][6];
    Arrays.stream(alike).forEach(cell -> Arrays.fill(cell, Math.log(150)));
    alike[0][4] = Math.log(149);
    List<double[]> cells = List.of(alike);
    assertThat(StrayChances.of(cells, kept(cells), 1 / Math.sqrt(12) / 150).get(0)[4])
        .isLessThan(StrayChances.SET_ASIDE);
    assertThat(StrayChances.of(cells, kept(cells), 0).get(0)[4])
        .isGreaterThan(StrayChances.SET_ASIDE);
  }

  /** Where both can be reckoned, large cells are judged nearly as small ones are. */
  @Test
  void theMixtureOfALargeCellIsNearTheSumOverSubsets() {
    Random random = new Random(Seed.of(StrayChancesTest.class));
    for (int cell = 0; cell < 60; cell++) {
      double[] values = random.doubles(13).map(u -> 4 + 0.006 * random.nextGaussian()).toArray();
      values[3] -= cell % 3 == 0 ? 0 : 0.012 + 0.05 * random.nextDouble();
      double[][] summed = new CellSubsets(values, new boolean[13]).chances().chance();
      CellChances mixed = new CellMixture(values, new boolean[13]).chances();
      for (int i = 0; i < 13; i++) {
        assertThat(mixed.chance()[i][12]).isCloseTo(summed[i][12], within(0.04));
      }
    }
  }

  /** 150 plucked shots among 5000, and a third of them twice as far as any is thought to be. */
  @Test
  @Timeout(60)
  void hundredsAreFoundInACellOfThousands() {
    long seed = Seed.of(StrayChancesTest.class);
    Random random = new Random(seed);
    double[] cell = random.doubles(5000).map(u -> 4 + 0.006 * random.nextGaussian()).toArray();
    for (int i = 0; i < 150; i++) {
      cell[33 * i] -= i % 3 == 0 ? 0.3 : 0.05;
    }
    double[] chances = chances(List.of(cell)).get(0);
    for (int i = 0; i < cell.length; i++) {
      boolean isPlucked = i % 33 == 0 && i < 33 * 150;
      boolean isFar = Math.abs(cell[i] - 4) > 3 * 0.006;
      if (isPlucked || !isFar) {
        assertThat(chances[i] > StrayChances.SET_ASIDE)
            .as("%d of %d", i, seed)
            .isEqualTo(isPlucked);
      }
    }
  }

  /** 3 % of shots 5 to 10 % too slow; cells of three, the usual way to shoot, too. */
  @Test
  void pluckedShotsAreFoundAndGoodOnesStay() {
    Random random = new Random(Seed.of(StrayChancesTest.class));
    for (int shots : List.of(3, 4, 6, 13, 40, 200)) {
      Tally tally = new Tally();
      for (int shot = 0; shot < (shots > 8 ? FEWER : SHOTS); shot += 4 * shots) {
        tally.add(random, shots);
      }
      System.out.printf(
          "| strays: cells of %d | missed %.2f %% | good ones lost %.3f %% |%n",
          shots, 100 * tally.missed(), 100 * tally.lost());
      assertThat(tally.missed()).as("missed in cells of %d", shots).isLessThan(0.03);
      assertThat(tally.lost()).as("lost in cells of %d", shots).isLessThan(0.001);
    }
  }

  private static final class Tally {
    private int good;
    private int lost;
    private int plucked;
    private int missed;

    void add(Random random, int shots) {
      double sd = Math.exp(Math.log(0.003) + random.nextDouble() * Math.log(0.01 / 0.003));
      List<double[]> cells = new ArrayList<>();
      List<boolean[]> truth = new ArrayList<>();
      int arrows = 3 + random.nextInt(3);
      for (int a = 0; a < arrows; a++) {
        boolean[] out = new boolean[shots];
        int count = 0;
        for (int i = 0; i < shots; i++) {
          out[i] = count < (shots - 1) / 2 && random.nextDouble() < 0.03;
          count += out[i] ? 1 : 0;
        }
        truth.add(out);
        cells.add(
            IntStream.range(0, shots)
                .mapToDouble(
                    i ->
                        4
                            + sd * random.nextGaussian()
                            - (out[i] ? 0.05 + 0.05 * random.nextDouble() : 0))
                .toArray());
      }
      List<double[]> told = chances(cells);
      for (int a = 0; a < arrows; a++) {
        for (int i = 0; i < shots; i++) {
          boolean found = told.get(a)[i] > StrayChances.SET_ASIDE;
          plucked += truth.get(a)[i] ? 1 : 0;
          missed += truth.get(a)[i] && !found ? 1 : 0;
          good += truth.get(a)[i] ? 0 : 1;
          lost += !truth.get(a)[i] && found ? 1 : 0;
        }
      }
    }

    double missed() {
      return (double) missed / plucked;
    }

    double lost() {
      return (double) lost / good;
    }
  }
}
