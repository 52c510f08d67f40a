package castwell.analysis.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.season.SimulatedSeason.Errors;
import castwell.analysis.season.SimulatedSeason.Shot;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Random seasons through R's nlme, which knows straight lines only: so the curve is replaced by its
 * line at e = 0, without a prior on e. At the standard deviations that nlme finds, the restricted
 * likelihood, the estimates and their standard errors are the same here.
 */
@Tag("r")
class NlmeTest {
  private static final int SETS = 6;
  private static final double[] GRAINS = {400, 460, 530, 610};
  private static final Priors FLAT =
      new Priors(
          Priors.ASSUMED.day(),
          Priors.ASSUMED.bowDay(),
          Priors.ASSUMED.arrow(),
          0.006,
          3,
          0,
          Double.POSITIVE_INFINITY);

  private static SimulatedSeason season(Random random) {
    SimulatedSeason season =
        new SimulatedSeason(random, new Errors(0.007, 0.004, 0.004, 0.006, 0, 0), 3, GRAINS);
    for (int j = 0; j < 7; j++) {
      Shot[] shots =
          j == 3
              ? new Shot[] {Shot.of(2), Shot.of(0)}
              : new Shot[] {Shot.of(0), Shot.of(1), Shot.of(2)};
      season.session(2 + random.nextInt(3), shots);
    }
    return season;
  }

  @Test
  void likelihoodEstimatesAndErrors(@TempDir Path folder) throws Exception {
    Random random = new Random(Seed.of(NlmeTest.class));
    List<SimulatedSeason> seasons = new ArrayList<>();
    for (int set = 0; set < SETS; set++) {
      seasons.add(season(random));
    }
    Map<String, TreeMap<Integer, Double>> answers = askR(folder, seasons);
    for (int set = 0; set < SETS; set++) {
      Map<Integer, Double> sd = answers.get(set + ",sd");
      Map<Integer, Double> estimate = answers.get(set + ",estimate");
      Map<Integer, Double> se = answers.get(set + ",se");
      Layout layout = layout(seasons.get(set), set);
      Solution solution = solution(layout, sd);
      double likelihood = answers.get(set + ",likelihood").get(0);
      assertThat(solution.logLikelihood + ofShots(layout, sd.get(3)))
          .as("likelihood of season %d", set)
          .isCloseTo(likelihood, within(1e-6));
      double[] step = solution.step();
      double[] covariance = solution.covariance();
      assertThat(estimate).hasSize(step.length);
      for (int p = 0; p < step.length; p++) {
        assertThat(step[p]).isCloseTo(estimate.get(p), within(1e-7));
        assertThat(Math.sqrt(covariance[p * step.length + p]))
            .isCloseTo(se.get(p), within(1e-6 * se.get(p)));
      }
    }
  }

  /** Every other season has a condition, with no belief beforehand in what it does. */
  private static Layout layout(SimulatedSeason season, int set) {
    Map<String, Double> values = new HashMap<>();
    season
        .cells()
        .forEach(cell -> values.put(cell.session(), Math.sqrt(3 + values.size() * (set + 1))));
    Covariate covariate = new Covariate("condition", Double.POSITIVE_INFINITY, values);
    return new Layout(season.cells(), set % 2 == 0 ? List.of() : List.of(covariate));
  }

  private static Solution solution(Layout layout, Map<Integer, Double> sd) {
    Tangent line = new Tangent(layout, new double[2 * layout.stateCount()]);
    double[] variance = {sd.get(3) * sd.get(3), sd.get(3) * sd.get(3), sd.get(3) * sd.get(3)};
    BlockSums sums = new BlockSums(layout, variance, line, new double[layout.cells.length]);
    Information information = new Information(layout, line, sums, sd.get(0), sd.get(1));
    return new Solution(layout, line, FLAT, information, sd.get(2));
  }

  /** What the likelihood of all shots has beside that of the cells' means. */
  private static double ofShots(Layout layout, double sd) {
    double squares = 0;
    double logs = 0;
    int shots = 0;
    for (SeasonCell cell : layout.cells) {
      squares += cell.squares();
      logs += Math.log(cell.shots());
      shots += cell.shots();
    }
    return -squares / (2 * sd * sd)
        - (shots - layout.cells.length) * Math.log(sd)
        - (shots - 2 * layout.stateCount() - layout.covariates.size()) * Math.log(2 * Math.PI) / 2
        - logs / 2;
  }

  private static Map<String, TreeMap<Integer, Double>> askR(
      Path folder, List<SimulatedSeason> seasons) throws Exception {
    Path shots = folder.resolve("shots.csv");
    Path answers = folder.resolve("answers.csv");
    write(shots, seasons);
    Path script = Path.of(NlmeTest.class.getResource("/r/seasons.R").toURI());
    Process process =
        new ProcessBuilder(
                "Rscript", "--vanilla", script.toString(), shots.toString(), answers.toString())
            .inheritIO()
            .start();
    assertThat(process.waitFor(100, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as("R's exit code").isZero();
    Map<String, TreeMap<Integer, Double>> told = new HashMap<>();
    for (String line : Files.readAllLines(answers)) {
      String[] fields = line.split(",");
      told.computeIfAbsent(fields[0] + "," + fields[1], key -> new TreeMap<>())
          .put(Integer.parseInt(fields[2]), Double.parseDouble(fields[3]));
    }
    return told;
  }

  private static void write(Path file, List<SimulatedSeason> seasons) throws IOException {
    try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
      out.println("set,bow,session,arrow,x,z,y");
      for (int set = 0; set < seasons.size(); set++) {
        List<SeasonCell> cells = seasons.get(set).cells();
        Layout layout = layout(seasons.get(set), set);
        double mean = layout.arrows.meanKg;
        for (int c = 0; c < cells.size(); c++) {
          SeasonCell cell = cells.get(c);
          double x = -(cell.massKg() / mean - 1) / 2;
          for (double y : seasons.get(set).logSpeeds().get(c)) {
            out.printf(
                "%d,%s,%s,%s,%s,%s,%s%n",
                set, cell.bow(), cell.session(), cell.arrow(), x, z(layout, cell), y);
          }
        }
      }
    }
  }

  private static double z(Layout layout, SeasonCell cell) {
    return layout.covariates.stream()
        .mapToDouble(covariate -> covariate.bySession().get(cell.session()) - covariate.mean())
        .sum();
  }
}
