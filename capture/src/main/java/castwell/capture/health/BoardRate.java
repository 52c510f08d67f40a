package castwell.capture.health;

import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.TickRate;
import java.util.Optional;

/**
 * How fast a board's counter runs.
 *
 * @param nominalHz the rate that the board tells
 * @param oscillator what keeps the board's time, by the gates' calibration
 * @param measured by this computer's clock alone; empty while there are too few heartbeats for it
 * @param beats how many heartbeats it was measured from
 */
public record BoardRate(
    String device,
    double nominalHz,
    Oscillator oscillator,
    Optional<TickRate> measured,
    int beats) {

  /** How much faster than nominal, relatively; negative where it is slower. */
  public static double error(TickRate measured, double nominalHz) {
    return measured.hz() / nominalHz - 1;
  }
}
