package castwell.analysis.againstr;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.analysis.bow.VirtualMassFit;
import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.PooledSd;
import castwell.analysis.statistic.Spearman;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.statistic.StraightLine;
import castwell.analysis.statistic.TPower;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
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
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same random data sets through R (r-base-core, as installed here) and through this project:
 * lm, rstudent, nls, t.test, power.t.test and cor.test agree to 1e-6 of the value.
 */
@Tag("r")
class AgainstRTest {
  private static final int SETS = 200;
  private static final double RELATIVE = 1e-6;

  /** A rank correlation of exactly 0 comes out as 0 to the last digit of a 1. */
  private static final double ROUNDING = 1e-15;

  private static final List<RandomShots> DATA = new ArrayList<>();

  /** By "set,what". */
  private static final Map<String, TreeMap<Integer, Double>> ANSWERS = new HashMap<>();

  @BeforeAll
  static void askR(@TempDir Path folder) throws Exception {
    long seed = Seed.of(AgainstRTest.class);
    Random random = new Random(seed);
    for (int set = 0; set < SETS; set++) {
      DATA.add(RandomShots.of(random));
    }
    Path shots = folder.resolve("shots.csv");
    Path pairs = folder.resolve("pairs.csv");
    Path answers = folder.resolve("answers.csv");
    write(shots, pairs);
    Path script = Path.of(AgainstRTest.class.getResource("/r/oracle.R").toURI());
    Process process =
        new ProcessBuilder(
                "Rscript",
                "--vanilla",
                script.toString(),
                shots.toString(),
                pairs.toString(),
                answers.toString())
            .inheritIO()
            .start();
    assertThat(process.waitFor(100, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as("R's exit code, seed %d", seed).isZero();
    for (String line : Files.readAllLines(answers)) {
      String[] fields = line.split(",");
      ANSWERS
          .computeIfAbsent(fields[0] + "," + fields[1], key -> new TreeMap<>())
          .put(Integer.parseInt(fields[2]), Double.parseDouble(fields[3]));
    }
  }

  private static void write(Path shots, Path pairs) throws IOException {
    try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(shots))) {
      out.println("set,cell,mass,speed");
      for (int set = 0; set < SETS; set++) {
        RandomShots data = DATA.get(set);
        for (int i = 0; i < data.cell().length; i++) {
          out.println(
              set + "," + data.cell()[i] + "," + data.massKg()[i] + "," + data.speedMps()[i]);
        }
      }
    }
    try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(pairs))) {
      out.println("set,x,y");
      for (int set = 0; set < SETS; set++) {
        for (int i = 0; i < DATA.get(set).x().length; i++) {
          out.println(set + "," + DATA.get(set).x()[i] + "," + DATA.get(set).y()[i]);
        }
      }
    }
  }

  private interface Ours {
    double[] of(int set, RandomShots data);
  }

  private static void agree(String what, Ours ours) {
    for (int set = 0; set < SETS; set++) {
      TreeMap<Integer, Double> answers = ANSWERS.get(set + "," + what);
      double[] theirs = answers.values().stream().mapToDouble(value -> value).toArray();
      double[] mine = ours.of(set, DATA.get(set));
      assertThat(mine).as("%s of set %d", what, set).hasSameSizeAs(theirs);
      for (int i = 0; i < theirs.length; i++) {
        assertThat(Math.abs(mine[i] - theirs[i]))
            .as("%s %d of set %d: R %s, here %s", what, i, set, theirs[i], mine[i])
            .isLessThanOrEqualTo(RELATIVE * Math.abs(theirs[i]) + ROUNDING);
      }
    }
  }

  @Test
  void straightLineAsLm() {
    agree(
        "line",
        (set, data) -> {
          StraightLine line = StraightLine.fit(data.massKg(), data.speedMps()).orElseThrow();
          return new double[] {
            line.intercept(), line.slope(), line.interceptSe(), line.slopeSe(), line.residualSd()
          };
        });
  }

  @Test
  void pooledSdAsLm() {
    agree(
        "pooled",
        (set, data) ->
            new double[] {
              PooledSd.of(IntStream.range(0, data.cells()).mapToObj(data::speedsMps).toList()).sd()
            });
  }

  @Test
  void virtualMassAsNls() {
    agree(
        "nls",
        (set, data) -> {
          VirtualMassFit fit = VirtualMassFit.of(data.massKg(), data.speedMps()).orElseThrow();
          return new double[] {
            fit.energyJ(),
            fit.virtualMassKg(),
            fit.energySe(),
            fit.virtualMassSe(),
            fit.residualSdMps(),
            fit.correlation()
          };
        });
  }

  @Test
  void intervalOfOneMeanAsTTest() {
    agree(
        "one",
        (set, data) -> {
          Quantity mean = mean("a", data.speedsMps(0));
          Interval interval = mean.interval(0.95);
          return new double[] {mean.value(), interval.low(), interval.high()};
        });
  }

  @Test
  void differenceOfTwoMeansAsWelchsTTest() {
    agree(
        "welch",
        (set, data) -> {
          Quantity difference = mean("a", data.speedsMps(0)).minus(mean("b", data.speedsMps(1)));
          Interval interval = difference.interval(0.95);
          return new double[] {
            difference.value() / difference.standardUncertainty(),
            difference.effectiveDegreesOfFreedom(),
            difference.pValue(),
            interval.low(),
            interval.high()
          };
        });
  }

  @Test
  void powerAndNumberOfShotsAsPowerTTest() {
    agree(
        "power",
        (set, data) -> {
          double[] shots = data.speedsMps(0);
          double sd = StandardDeviation.of(shots);
          double delta = sd * (0.5 + set % 7 / 3.0);
          return new double[] {
            TPower.of(2, shots.length, delta, sd, 0.05), TPower.shotsEach(2, delta, sd, 0.05, 0.9)
          };
        });
  }

  @Test
  void rankCorrelationAsCorTest() {
    agree(
        "spearman",
        (set, data) -> {
          var test = Spearman.test(data.x(), data.y());
          return new double[] {test.rho(), test.pValue()};
        });
  }

  private static Quantity mean(String name, double[] values) {
    double u = StandardDeviation.of(values) / Math.sqrt(values.length);
    return Quantity.of(Mean.of(values), u, new Source(name, Kind.OWN, values.length - 1));
  }
}
