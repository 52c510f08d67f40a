package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BeforeAndAfterTest {
  private static Change change(String bow, double[] before, double[] after) {
    return Change.of(
            bow,
            List.of(Made.cell(bow, "arrow", "before", 0.03, before)),
            List.of(Made.cell(bow, "arrow", "after", 0.03, after)))
        .orElseThrow();
  }

  private static double t(Quantity quantity) {
    return quantity.value() / quantity.standardUncertainty();
  }

  /** NIST/SEMATECH e-Handbook, 7.3.1 (t and nu; the data from memory, p worked out in SciPy). */
  @Test
  void welchsTestOfTwoProcesses() {
    Change change =
        change(
            "bow",
            new double[] {36, 31, 30, 31, 34, 36, 29, 32, 31},
            new double[] {32, 37, 35, 28, 41, 44, 35, 31, 34, 38, 42});
    Quantity difference = change.meanMps().only(Kind.OWN);

    assertThat(t(difference)).isCloseTo(2.2693731334, within(1e-9));
    assertThat(difference.effectiveDegreesOfFreedom()).isCloseTo(15.5325143535, within(1e-9));
    assertThat(difference.pValue()).isCloseTo(0.0378794761, within(1e-9));
  }

  private static final double[] SLEEP_1 = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
  private static final double[] SLEEP_2 = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};

  /** Student (1908), R's data set sleep: t.test(extra ~ group). */
  @Test
  void welchsTestOfSleep() {
    Quantity difference = mean("1", SLEEP_1).minus(mean("2", SLEEP_2));

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
    Quantity difference =
        mean(
            "pairs",
            IntStream.range(0, SLEEP_1.length).mapToDouble(i -> SLEEP_1[i] - SLEEP_2[i]).toArray());

    assertThat(t(difference)).isCloseTo(-4.0621, within(5e-5));
    assertThat(difference.pValue()).isCloseTo(0.002833, within(5e-7));
    Interval interval = difference.interval(0.95);
    assertThat(interval.low()).isCloseTo(-2.4598858, within(1e-7));
    assertThat(interval.high()).isCloseTo(-0.7001142, within(1e-7));
  }

  private static Quantity mean(String name, double[] values) {
    double u = StandardDeviation.of(values) / Math.sqrt(values.length);
    return Quantity.of(Mean.of(values), u, new Source(name, Kind.OWN, values.length - 1));
  }

  /** Worked out from the formula apart from this project: SE2 = sum s2/n, Welch-Satterthwaite. */
  @Test
  void oneControlIsSubtracted() {
    Change bow = change("bow", Made.with(150, 1.2, 10), Made.with(154, 1.5, 10));
    Change control = change("other", Made.with(148, 1.1, 8), Made.with(148.6, 1.3, 8));

    Quantity effect =
        Control.of(List.of(control.meanMps())).takenFrom(bow.meanMps()).only(Kind.OWN);

    assertThat(effect.value()).isCloseTo(3.4, within(1e-12));
    assertThat(effect.standardUncertainty()).isCloseTo(.855277733, within(1e-9));
    assertThat(effect.effectiveDegreesOfFreedom()).isCloseTo(30.450888, within(1e-6));
    assertThat(t(effect)).isCloseTo(3.975317, within(1e-6));
    assertThat(effect.interval(0.95).low()).isCloseTo(1.654374, within(1e-6));
    assertThat(effect.interval(0.95).high()).isCloseTo(5.145626, within(1e-6));
  }

  /**
   * Card and Krueger, Am. Econ. Rev. 84 (1994) 772, table 3, from memory: Pennsylvania 23.33 to
   * 21.17, New Jersey 20.44 to 21.03; 2.76 there, 2.75 from the rounded cells.
   */
  @Test
  void fastFoodEmployment() {
    Quantity day = Quantity.exact(21.17 - 23.33);
    Quantity effect = Control.of(List.of(day)).takenFrom(Quantity.exact(21.03 - 20.44));

    assertThat(effect.value()).isCloseTo(2.75, within(1e-9));
  }

  @Test
  void controlsThatDisagreeWidenTheInterval() {
    Quantity change = Quantity.of(4, 0.5, Source.own("bow"));
    Quantity one = Quantity.of(1, 0.5, Source.own("control 1"));
    Quantity likeIt = Quantity.of(1.1, 0.5, Source.own("control 2"));
    Quantity unlike = Quantity.of(-3, 0.5, Source.own("control 2"));

    Quantity agreed = Control.of(List.of(one, likeIt)).takenFrom(change);
    Quantity disagreed = Control.of(List.of(one, unlike)).takenFrom(change);

    assertThat(agreed.standardUncertainty()).isCloseTo(Math.sqrt(.25 * 1.5), within(1e-12));
    // By hand: s2 = 8, mean u2 = 0.25, tau2 = 7.75, and tau2 (1 + 1/2) more.
    assertThat(disagreed.standardUncertainty())
        .isCloseTo(Math.sqrt(.25 * 1.5 + 7.75 * 1.5), within(1e-12));
    assertThat(disagreed.effectiveDegreesOfFreedom()).isLessThan(1.1);
  }

  /**
   * R 4.2.2: oneway.test of c(50.1,50.4,49.8,50.3), c(51.0,50.2,50.9), c(49.9,50.6,50.0,50.1,50.2):
   * p 0.261915085738; of the first two 0.145535596768.
   */
  @Test
  void controlsAgreeAsInROnewayTest() {
    Quantity one = mean("one", new double[] {50.1, 50.4, 49.8, 50.3});
    Quantity two = mean("two", new double[] {51.0, 50.2, 50.9});
    Quantity three = mean("three", new double[] {49.9, 50.6, 50.0, 50.1, 50.2});

    assertThat(Control.of(List.of(one, two, three)).agreementP())
        .isCloseTo(0.261915085738, within(1e-10));
    assertThat(Control.of(List.of(one, two)).agreementP()).isCloseTo(0.145535596768, within(1e-10));
    assertThat(Control.of(List.of(one)).agreementP()).isEqualTo(1);
    assertThat(Control.of(List.of(one, Quantity.exact(40))).agreementP()).isEqualTo(1);
  }

  @Test
  void severalArrowsWeighAlike() {
    Change change =
        Change.of(
                "bow",
                List.of(
                    Made.cell("bow", "a", "d1", 0.03, 40, 41),
                    Made.cell("bow", "b", "d1", 0.04, 30)),
                List.of(
                    Made.cell("bow", "a", "d2", 0.03, 44, 45, 46),
                    Made.cell("bow", "c", "d2", 0.05, 20)))
            .orElseThrow();

    assertThat(change.arrows()).extracting(Change.OfArrow::arrow).containsExactly("a");
    assertThat(change.meanMps().value()).isCloseTo(4.5, within(1e-12));
  }

  /** A gate spacing that is wrong on both days alike cancels but for the change's own share. */
  @Test
  void whatTheSetUpHasInCommonCancels() {
    Change change = change("bow", Made.with(150, 1, 9), Made.with(152, 1, 9));

    assertThat(change.meanMps().standardUncertainty(Kind.COMMON))
        .isCloseTo(0.005 * 2, within(1e-12));
    assertThat(Arrays.asList(Conclusion.values())).contains(Conclusion.of(change.meanMps()));
  }

  @Test
  void aLoneShotEachDayCantTell() {
    Change change = change("bow", new double[] {40}, new double[] {50});

    assertThat(Conclusion.of(change.meanMps())).isEqualTo(Conclusion.CANT_TELL);
  }
}
