package castwell.analysis.season;

import castwell.analysis.Seed;
import castwell.analysis.bow.Target;
import castwell.analysis.season.SimulatedSeason.Shot;
import castwell.analysis.uncertainty.Quantity;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** How long a large season takes: 100 000 shots, 10 000 cells, 30 bows, 500 sessions. */
class SeasonMeasured {
  private static final int SESSIONS = 500;
  private static final int BOWS = 30;
  private static final int REPEATS = 7;

  @Test
  void aLargeSeason() {
    SimulatedSeason simulated =
        new SimulatedSeason(
            new Random(Seed.of(SeasonMeasured.class)),
            new SimulatedSeason.Errors(0.006, 0.004, 0.002, 0.006, 0.002, 1),
            BOWS,
            380,
            430,
            490,
            550,
            620);
    for (int j = 0; j < SESSIONS; j++) {
      Shot[] shots = new Shot[4];
      for (int b = 0; b < shots.length; b++) {
        shots[b] = Shot.of((b * 7 + j * 3 + j / BOWS) % BOWS);
      }
      simulated.session(10, shots);
    }
    List<SeasonCell> cells = simulated.cells();
    List<SeasonCell> before = cells.subList(0, cells.size() - 20);
    Season season = time("fit", () -> Season.fit(cells, Priors.ASSUMED));
    double[] start = Season.fit(before, Priors.ASSUMED).grid().mode();
    time(
        "fit from the mode before the last session",
        () -> Season.fit(cells, Priors.ASSUMED, start));
    VarianceGrid kept = Season.fit(before, Priors.ASSUMED).grid();
    time(
        "brought up to date after the last session",
        () -> kept.upTo(cells, List.of(), Priors.ASSUMED));
    time("what days did", season::days);
    Set<String> last =
        cells.subList(cells.size() - 20, cells.size()).stream()
            .map(SeasonCell::bow)
            .collect(Collectors.toSet());
    List<SeasonCell> few = cells.stream().filter(cell -> last.contains(cell.bow())).toList();
    time(
        "the last session's bows, by the season's grid",
        () -> Season.fit(few, Priors.ASSUMED, season.grid()));
    time("one interval", () -> season.state("bow 1").logSpeed(0.032).interval(0.95));
    time("energy", () -> season.state("bow 1").energy().logEnergy().interval(0.95));
    time(
        "reach", () -> season.state("bow 1").reach(new Target.Momentum(Quantity.exact(1.6)), 0.95));
  }

  private static <T> T time(String what, Supplier<T> task) {
    T result = task.get();
    double[] ms = new double[REPEATS];
    for (int i = 0; i < REPEATS; i++) {
      long from = System.nanoTime();
      result = task.get();
      ms[i] = (System.nanoTime() - from) / 1e6;
    }
    Arrays.sort(ms);
    System.out.printf("| season: %s, ms | %.1f | least %.1f |%n", what, ms[REPEATS / 2], ms[0]);
    return result;
  }
}
