package castwell.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against a library that works it out at length. */
class TLawTest {
  @ParameterizedTest
  @ValueSource(doubles = {0.7, 1, 2.5, 4, 10, 33.3, 120, 700, 999.9, 1000, 5000, 1e6})
  void asTheLibrary(double degrees) {
    TLaw ours = new TLaw(degrees);
    TDistribution theirs = new TDistribution(degrees);
    for (double t = -12; t <= 12; t += 0.25) {
      double below = theirs.cumulativeProbability(t);
      assertThat(ours.below(t)).as("t %s", t).isCloseTo(below, within(1e-10));
      double density = theirs.density(t);
      assertThat(ours.density(t)).isCloseTo(density, within(1e-9 * density + 1e-300));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-30, -9, -7.01, -6.99, -5, -2, -1, -0.1, 0, 0.3, 1.96, 4, 8})
  void normalAsTheLibrary(double z) {
    double theirs = new NormalDistribution().cumulativeProbability(z);
    assertThat(NormalLaw.below(z)).isCloseTo(theirs, within(1e-6 * theirs));
    assertThat(NormalLaw.below(z)).isCloseTo(theirs, within(1e-14));
  }
}
