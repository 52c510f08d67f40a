package castwell.analysis.statistic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
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
    // R 4.2.2: predict(lm(y ~ x, norris), data.frame(x = 500))
    close(line.at(500), 500.796085936453);
  }

  private static double[] numbers(String... fields) {
    return Arrays.stream(fields).mapToDouble(Double::parseDouble).toArray();
  }
}
