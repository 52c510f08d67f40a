package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConclusionTest {
  /** By the words alone: 0 inside or not, and all of it within 1 % or not. */
  @ParameterizedTest
  @CsvSource({
    "0.0001, 0.002, FASTER",
    "0.02, 0.04, FASTER",
    "-0.04, -0.02, SLOWER",
    "-0.009, 0.01, NO_LARGER_CHANGE",
    "-0.01, 0, NO_LARGER_CHANGE",
    "-0.009, 0.0101, CANT_TELL",
    "-0.02, 0.001, CANT_TELL"
  })
  void whatAnIntervalAllowsToSay(double low, double high, Conclusion conclusion) {
    Estimate share = new Estimate((low + high) / 2, new Interval(low, high));

    assertThat(Conclusion.of(share)).isEqualTo(conclusion);
  }
}
