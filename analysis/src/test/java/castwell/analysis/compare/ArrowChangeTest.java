package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.cell.CellSums;
import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ArrowChangeTest {
  private static final double[] SLEEP_1 = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
  private static final double[] SLEEP_2 = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};

  private static CellSums cell(String session, double... speeds) {
    return CellSums.of(Made.cell("bow", "arrow", session, 0.03, speeds));
  }

  private static double t(Quantity quantity) {
    return quantity.value() / quantity.standardUncertainty();
  }

  /** NIST/SEMATECH e-Handbook, 7.3.1 (t and nu; the data from memory, p worked out in SciPy). */
  @Test
  void welchsTestOfTwoProcesses() {
    ArrowChange change =
        ArrowChange.of(
            List.of(cell("before", 36, 31, 30, 31, 34, 36, 29, 32, 31)),
            List.of(cell("after", 32, 37, 35, 28, 41, 44, 35, 31, 34, 38, 42)));
    Quantity difference = change.changeMps();

    assertThat(t(difference)).isCloseTo(2.2693731334, within(1e-9));
    assertThat(difference.effectiveDegreesOfFreedom()).isCloseTo(15.5325143535, within(1e-9));
    assertThat(difference.pValue()).isCloseTo(0.0378794761, within(1e-9));
    assertThat(change.nBefore()).isEqualTo(9);
    assertThat(change.nAfter()).isEqualTo(11);
  }

  /** Student (1908), R's data set sleep: t.test(extra ~ group); cut to two sessions of each. */
  @Test
  void sessionsOfOneSideAreTakenForOne() {
    ArrowChange change =
        ArrowChange.of(
            List.of(cell("1", 1.9, 0.8, 1.1, 0.1), cell("2", -0.1, 4.4, 5.5, 1.6, 4.6, 3.4)),
            List.of(cell("3", 0.7, -1.6, -0.2), cell("4", -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0)));
    Quantity difference = change.changeMps();

    assertThat(t(difference)).isCloseTo(-1.8608, within(5e-5));
    assertThat(difference.effectiveDegreesOfFreedom()).isCloseTo(17.776, within(5e-4));
    assertThat(difference.pValue()).isCloseTo(0.07939, within(5e-6));
    Interval interval = difference.interval(0.95);
    assertThat(interval.low()).isCloseTo(-3.3654832, within(5e-8));
    assertThat(interval.high()).isCloseTo(0.2054832, within(5e-8));
  }

  /** The same, paired: t.test(extra ~ group, paired = TRUE). */
  @Test
  void pairedTestOfSleep() {
    double[] pairs =
        IntStream.range(0, SLEEP_1.length).mapToDouble(i -> SLEEP_1[i] - SLEEP_2[i]).toArray();
    double u = StandardDeviation.of(pairs) / Math.sqrt(pairs.length);
    Quantity difference =
        Quantity.of(Mean.of(pairs), u, new Source("pairs", Kind.OWN, pairs.length - 1));

    assertThat(t(difference)).isCloseTo(-4.0621, within(5e-5));
    assertThat(difference.pValue()).isCloseTo(0.002833, within(5e-7));
    Interval interval = difference.interval(0.95);
    assertThat(interval.low()).isCloseTo(-2.4598858, within(1e-7));
    assertThat(interval.high()).isCloseTo(-0.7001142, within(1e-7));
  }

  @Test
  void aLoneShotSaysNothing() {
    ArrowChange change = ArrowChange.of(List.of(cell("1", 40)), List.of(cell("2", 50, 50.1)));

    assertThat(change.changeMps().value()).isCloseTo(10.05, within(1e-12));
    assertThat(change.changeMps().pValue()).isEqualTo(1);
    assertThat(change.changeMps().interval(0.95).high()).isInfinite();
  }
}
