package castwell.web;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * How long the report of all bows takes, from the command to its end: with cells kept as sums, and
 * from each shot anew; and an R script that works out the same from the exported shots. See
 * .ci/measure.
 */
class ReportMeasured {
  private static final int TIMES = Integer.getInteger("castwell.times", 5);
  private static final Path IN_R = Path.of("src/test/resources/castwell/web/ranking.R");

  @Test
  void ofAllBows() throws IOException, InterruptedException {
    int shots = Integer.parseInt(System.getProperty("castwell.shots", "100000").split(" ")[0]);
    Path kept = MeasuredStore.of(shots);
    Path unmade = MeasuredStore.withoutCells(shots);
    Path sheet = kept.resolveSibling(shots + ".csv");
    Shipped.seconds(
        "--data", kept.toString(), "export", "--what", "shots", "--out", sheet.toString());
    Map<String, double[]> seconds = new TreeMap<>();
    for (int i = 0; i < TIMES; i++) {
      note(
          seconds,
          "ranking, cells kept",
          i,
          Shipped.seconds("--data", kept.toString(), "report", "ranking"));
      note(
          seconds,
          "ranking, from every shot",
          i,
          Shipped.seconds("--data", unmade.toString(), "report", "ranking"));
      note(
          seconds,
          "one bow",
          i,
          Shipped.seconds("--data", kept.toString(), "report", "bow", "bow 1"));
      note(seconds, "the ranking in R", i, inR(sheet));
    }
    System.out.printf(
        "| %d shots, s (%s) | the least of %d | the median |%n|---|---:|---:|%n",
        shots, Shipped.COMMAND, TIMES);
    seconds.forEach(
        (what, all) -> {
          Arrays.sort(all);
          System.out.printf("| %s | %.2f | %.2f |%n", what, all[0], all[TIMES / 2]);
        });
  }

  private static void note(Map<String, double[]> seconds, String what, int i, double took) {
    seconds.computeIfAbsent(what, w -> new double[TIMES])[i] = took;
  }

  private static double inR(Path sheet) throws IOException, InterruptedException {
    long began = System.nanoTime();
    Process r =
        new ProcessBuilder(List.of("Rscript", IN_R.toString(), sheet.toString()))
            .redirectOutput(Redirect.DISCARD)
            .redirectError(Redirect.INHERIT)
            .start();
    if (r.waitFor() != 0) {
      throw new IOException("Rscript failed");
    }
    return (System.nanoTime() - began) / 1e9;
  }
}
