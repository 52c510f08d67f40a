package castwell.analysis.tickrate;

import castwell.analysis.speed.TickRate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Many measurements of one board's tick rate made into the one to use. */
public final class TickRates {
  /** Standard uncertainties of their difference by which measurement and nominal may differ. */
  private static final double REFUTED_BEYOND = 4;

  /** Nothing is known exactly, and a weight must stay finite. */
  private static final double LEAST_RELATIVE_U = 1e-12;

  private TickRates() {}

  /**
   * The measurement made one with the nominal rate by inverse variance. A nominal rate that the
   * measurement refutes is left out: the board's part is then not what it is said to be.
   *
   * @param nominal what is believed before any measurement
   * @param measured one a segment; without any the nominal rate is the answer
   * @param hostClockRelativeU relative standard uncertainty of the host's clock rate, at least 0
   */
  public static TickRate combine(
      TickRate nominal, Collection<TickRate> measured, double hostClockRelativeU) {
    return measured(measured, hostClockRelativeU)
        .map(measurement -> withNominal(nominal, measurement))
        .orElse(nominal);
  }

  /**
   * The mean of the segments weighted by inverse variance; widened by the Birge ratio where they
   * scatter more than they say (R. T. Birge, Phys. Rev. 40 (1932) 207); the host clock's own
   * uncertainty, which all share, added in quadrature. Nothing is believed before; empty of none.
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

  /** At least 1: segments that agree better than they say may do so by luck. */
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
