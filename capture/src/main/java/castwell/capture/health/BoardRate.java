package castwell.capture.health;

import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.TickRate;
import java.util.Optional;

/**
 * How fast a board's counter runs.
 *
 * @param nominalHz as the board says
 * @param oscillator what keeps its time, as the gates' calibration says
 * @param measured by this computer's clock alone; empty while too few beats tell it
 * @param beats how many it was measured from
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
