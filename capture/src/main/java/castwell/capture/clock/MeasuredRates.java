package castwell.capture.clock;

import castwell.analysis.speed.TickRate;
import castwell.analysis.tickrate.TickRates;
import java.util.List;
import java.util.Optional;

/**
 * A board's tick rate as its beats told it at one moment.
 *
 * @param stretches one a stretch of beats; empty while they are too few
 */
public record MeasuredRates(List<TickRate> stretches) {

  public MeasuredRates {
    stretches = List.copyOf(stretches);
  }

  /** Made one with the nominal rate. */
  public TickRate with(TickRate nominal, double hostClockRelativeU) {
    return TickRates.combine(nominal, stretches, hostClockRelativeU);
  }

  /** The rate as the beats alone tell it. */
  public Optional<TickRate> alone(double hostClockRelativeU) {
    return TickRates.measured(stretches, hostClockRelativeU);
  }
}
