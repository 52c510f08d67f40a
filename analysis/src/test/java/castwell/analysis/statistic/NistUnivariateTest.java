package castwell.analysis.statistic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * NIST Statistical Reference Datasets, univariate: certified mean and standard deviation. To nine
 * digits, but for the standard deviation of NumAcc4: there the data themselves, as doubles, are off
 * by up to 1e-9 of a spread of 0.1.
 */
class NistUnivariateTest {
  @ParameterizedTest
  @CsvSource({
    "Lew, 200, -177.435, 277.332168044316, 1e-9",
    "Lottery, 218, 518.958715596330, 291.699727470969, 1e-9",
    "Mavro, 50, 2.001856, 0.000429123454003053, 1e-9",
    "Michelso, 100, 299.8524, 0.0790105478190518, 1e-9",
    "NumAcc1, 3, 10000002, 1, 1e-9",
    "NumAcc2, 1001, 1.2, 0.1, 1e-9",
    "NumAcc3, 1001, 1000000.2, 0.1, 1e-9",
    "NumAcc4, 1001, 10000000.2, 0.1, 2e-8",
  })
  void asCertified(String name, int n, double mean, double sd, double relative) {
    double[] values = data(name, n);

    assertThat(Mean.of(values)).isCloseTo(mean, within(1e-9 * Math.abs(mean)));
    assertThat(StandardDeviation.of(values)).isCloseTo(sd, within(relative * sd));
  }

  /** The data are the file's last n lines. */
  private static double[] data(String name, int n) {
    double[] all = Nist.column(name + ".txt");
    double[] data = new double[n];
    System.arraycopy(all, all.length - n, data, 0, n);
    return data;
  }
}
