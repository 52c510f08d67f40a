package castwell.analysis.statistic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * NIST Statistical Reference Datasets, linear regression: certified coefficients, their standard
 * deviations and the residual standard deviation, to nine digits.
 */
class NistLinearTest {
  private static void close(double actual, double certified) {
    assertThat(actual).isCloseTo(certified, within(1e-9 * Math.abs(certified)));
  }

  @Test
  void norris() {
    List<double[]> rows =
        Nist.lines("Norris.dat").stream()
            .skip(60)
            .filter(line -> !line.isBlank())
            .map(line -> numbers(line.strip().split("\\s+")))
            .toList();
    double[] y = rows.stream().mapToDouble(row -> row[0]).toArray();
    double[] x = rows.stream().mapToDouble(row -> row[1]).toArray();

    StraightLine line = StraightLine.fit(x, y).orElseThrow();

    close(line.intercept(), -0.262323073774029);
    close(line.interceptSe(), 0.232818234301152);
    close(line.slope(), 1.00211681802045);
    close(line.slopeSe(), 0.429796848199937E-03);
    close(line.residualSd(), 0.884796396144373);
    // R 4.2.2: predict(lm(y ~ x, norris), data.frame(x = c(0, 500)), se.fit = TRUE)
    close(line.at(500), 500.796085936453);
    close(line.seAt(500), 0.151502175800192);
    close(line.seAt(0), 0.232818234301154);

    LinearModel model =
        LinearModel.fit(rows.stream().map(r -> new double[] {r[1]}).toArray(double[][]::new), y);
    close(model.coefficients()[0], -0.262323073774029);
    close(model.standardErrors()[0], 0.232818234301152);
    close(model.coefficients()[1], 1.00211681802045);
    close(model.standardErrors()[1], 0.429796848199937E-03);
    close(model.residualSd(), 0.884796396144373);
  }

  @Test
  void longley() {
    List<double[]> rows =
        Nist.lines("longley.csv").stream().skip(1).map(line -> numbers(line.split(","))).toList();
    double[] y = rows.stream().mapToDouble(row -> row[1]).toArray();
    double[][] x = rows.stream().map(row -> Arrays.copyOfRange(row, 2, 8)).toArray(double[][]::new);

    LinearModel model = LinearModel.fit(x, y);

    List<String> certified = Nist.lines("Longley.certified.txt");
    assertThat(model.coefficients()).hasSameSizeAs(certified);
    for (int i = 0; i < certified.size(); i++) {
      double[] expected = numbers(certified.get(i).split(" "));
      close(model.coefficients()[i], expected[0]);
      close(model.standardErrors()[i], expected[1]);
    }
    close(model.residualSd(), 304.854073561965);
  }

  /** y = 1 + x + ... + x^5, x = 0 ... 20: all coefficients 1, no residuals. */
  @Test
  void wamplerOne() {
    double[][] x =
        IntStream.rangeClosed(0, 20)
            .mapToObj(i -> IntStream.rangeClosed(1, 5).mapToDouble(p -> Math.pow(i, p)).toArray())
            .toArray(double[][]::new);
    double[] y = Arrays.stream(x).mapToDouble(row -> 1 + Arrays.stream(row).sum()).toArray();

    LinearModel model = LinearModel.fit(x, y);

    assertThat(model.coefficients()).containsExactly(new double[] {1, 1, 1, 1, 1, 1}, within(1e-9));
    assertThat(model.residualSd()).isCloseTo(0, within(1e-8));
  }

  @Test
  void noInterceptOne() {
    LinearModel model =
        LinearModel.throughOrigin(
            IntStream.rangeClosed(60, 70).mapToObj(x -> new double[] {x}).toArray(double[][]::new),
            IntStream.rangeClosed(130, 140).asDoubleStream().toArray());

    close(model.coefficients()[0], 2.07438016528926);
    close(model.standardErrors()[0], 0.165289256198347E-01);
    close(model.residualSd(), 3.56753034006338);
  }

  @Test
  void noInterceptTwo() {
    LinearModel model =
        LinearModel.throughOrigin(new double[][] {{4}, {5}, {6}}, new double[] {3, 4, 4});

    close(model.coefficients()[0], 0.727272727272727);
    close(model.standardErrors()[0], 0.420827318078432E-01);
  }

  private static double[] numbers(String... fields) {
    return Arrays.stream(fields).mapToDouble(Double::parseDouble).toArray();
  }
}
