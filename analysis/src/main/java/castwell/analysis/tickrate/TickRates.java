package castwell.analysis.tickrate;

import castwell.analysis.speed.TickRate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** The combination of many measurements of one board's tick rate into the one to use. */
public final class TickRates {
  /**
   * How many standard uncertainties of their difference the measured and the nominal rate may be
   * apart.
   */
  private static final double REFUTED_BEYOND = 4;

  /**
   * The least relative uncertainty of a rate: nothing is known exactly, and a weight must stay
   * finite.
   */
  private static final double LEAST_RELATIVE_U = 1e-12;

  private TickRates() {}

  /**
   * The mean of the measured and the nominal rate, weighted by inverse variance. A nominal rate
   * that the measurement refutes is left out, since the board's oscillator then isn't what it is
   * said to be.
   *
   * @param nominal the rate that is believed before any measurement
   * @param measured one rate for each segment; without any, the nominal rate is the answer
   * @param hostClockRelativeU the relative standard uncertainty of the host's clock rate, at least
   *     0
   */
  public static TickRate combine(
      TickRate nominal, Collection<TickRate> measured, double hostClockRelativeU) {
    return measured(measured, hostClockRelativeU)
        .map(measurement -> withNominal(nominal, measurement))
        .orElse(nominal);
  }

  /**
   * The mean of the segments' rates, weighted by inverse variance; empty without a segment. Where
   * they scatter more than their uncertainties say, it is widened by the Birge ratio (R. T. Birge,
   * Phys. Rev. 40 (1932) 207). The host clock's own uncertainty, which all segments share, is added
   * in quadrature.
   */
  public static Optional<TickRate> measured(
      Collection<TickRate> segments, double hostClockRelativeU) {
    if (segments.isEmpty()) {
      return Optional.empty();
    }
    TickRate mean = mean(segments);
    double relativeU =
        Math.hypot(mean.relativeU() * birgeRatio(segments, mean.hz()), hostClockRelativeU);
    return Optional.of(new TickRate(mean.hz(), relativeU));
  }

  private static TickRate withNominal(TickRate nominal, TickRate measurement) {
    double sigmas =
        Math.abs(measurement.hz() - nominal.hz()) / Math.hypot(u(measurement), u(nominal));
    return sigmas > REFUTED_BEYOND ? measurement : mean(List.of(nominal, measurement));
  }

  private static TickRate mean(Collection<TickRate> rates) {
    double weights = 0;
    double weighted = 0;
    for (TickRate rate : rates) {
      weights += weight(rate);
      weighted += weight(rate) * rate.hz();
    }
    double hz = weighted / weights;
    return new TickRate(hz, 1 / Math.sqrt(weights) / hz);
  }

  /**
   * The Birge ratio, at least 1, since segments that agree better than their uncertainties say may
   * do so by luck.
   */
  private static double birgeRatio(Collection<TickRate> rates, double meanHz) {
    double chiSquared = 0;
    for (TickRate rate : rates) {
      double differenceHz = rate.hz() - meanHz;
      chiSquared += weight(rate) * differenceHz * differenceHz;
    }
    return rates.size() < 2 ? 1 : Math.max(1, Math.sqrt(chiSquared / (rates.size() - 1)));
  }

  private static double weight(TickRate rate) {
    return 1 / (u(rate) * u(rate));
  }

  private static double u(TickRate rate) {
    return rate.hz() * Math.max(rate.relativeU(), LEAST_RELATIVE_U);
  }
}
