package castwell.capture.clock;

import castwell.analysis.speed.TickRate;
import castwell.analysis.tickrate.TickRates;
import java.util.List;
import java.util.Optional;

/**
 * A board's tick rate as its beats had told it by one moment.
 *
 * @param stretches one rate for each stretch of beats; empty while there are too few beats
 */
public record MeasuredRates(List<TickRate> stretches) {

  public MeasuredRates {
    stretches = List.copyOf(stretches);
  }

  /** The measured rates combined with the nominal rate. */
  public TickRate with(TickRate nominal, double hostClockRelativeU) {
    return TickRates.combine(nominal, stretches, hostClockRelativeU);
  }

  /** The rate as the beats alone tell it; empty while they are too few. */
  public Optional<TickRate> alone(double hostClockRelativeU) {
    return TickRates.measured(stretches, hostClockRelativeU);
  }
}
