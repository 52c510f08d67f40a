package castwell.analysis.tickrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.TickRate;
import java.util.List;
import org.junit.jupiter.api.Test;

class CombinedRateTest {
  private static final double HZ = 2e6;
  private final TickRate vague = new TickRate(HZ, 0.1);

  @Test
  void withoutAMeasurementItIsTheNominalOne() {
    TickRate nominal = TickRate.nominal(HZ, Oscillator.RESONATOR);

    assertThat(TickRates.combine(nominal, List.of(), 1e-5)).isEqualTo(nominal);
  }

  /** The weighted mean of two: textbook formula, as in P. R. Bevington's chapter on weights. */
  @Test
  void segmentsWeighByInverseVariance() {
    TickRate rate = combine(vague, 0, at(+1, 1), at(-1, 2));

    assertThat(ppm(rate)).isCloseTo((1 / 1.0 - 1 / 4.0) / (1 / 1.0 + 1 / 4.0), within(1e-4));
    assertThat(rate.relativeU() * 1e6).isCloseTo(Math.sqrt(1 / (1 + 1 / 4.0)), within(1e-4));
  }

  /** Birge ratio sqrt(chi^2 / (n - 1)): Phys. Rev. 40 (1932) 207. Here chi^2 = 2 * 100, n = 2. */
  @Test
  void segmentsThatScatterMoreThanTheySayWidenTheUncertainty() {
    TickRate rate = combine(vague, 0, at(+10, 1), at(-10, 1));

    assertThat(rate.relativeU() * 1e6).isCloseTo(Math.sqrt(200) / Math.sqrt(2), within(1e-3));
  }

  @Test
  void segmentsThatAgreeTooWellNarrowNothing() {
    TickRate rate = combine(vague, 0, at(0, 1), at(0, 1));

    assertThat(rate.relativeU() * 1e6).isCloseTo(1 / Math.sqrt(2), within(1e-6));
  }

  @Test
  void theHostClocksOwnUncertaintyDoesNotAverageOut() {
    TickRate rate = combine(vague, 20e-6, at(0, 1), at(0, 1), at(0, 1), at(0, 1));

    assertThat(rate.relativeU() * 1e6).isCloseTo(Math.hypot(20, 0.5), within(1e-4));
  }

  @Test
  void aGoodCrystalHoldsAPoorHostClock() {
    TickRate rate = combine(new TickRate(HZ, 10e-6), 10e-6, at(20, 0));

    assertThat(ppm(rate)).isCloseTo(10, within(1e-3));
    assertThat(rate.relativeU() * 1e6).isCloseTo(10 / Math.sqrt(2), within(1e-3));
  }

  @Test
  void aNominalRateThatTheMeasurementRefutesIsLeftOut() {
    TickRate crystal = TickRate.nominal(HZ, Oscillator.CRYSTAL);

    assertThat(ppm(combine(crystal, 10e-6, at(-3732, 1)))).isCloseTo(-3732, within(1e-6));
  }

  private static TickRate combine(TickRate nominal, double hostClockU, TickRate... segments) {
    return TickRates.combine(nominal, List.of(segments), hostClockU);
  }

  private static TickRate at(double ppm, double uPpm) {
    return new TickRate(HZ * (1 + ppm * 1e-6), uPpm * 1e-6);
  }

  private static double ppm(TickRate rate) {
    return (rate.hz() / HZ - 1) * 1e6;
  }
}
