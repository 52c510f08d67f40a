package castwell.analysis.setup;

import castwell.analysis.uncertainty.Source;

/**
 * How far the rails may have grown or shrunk since the gates were measured.
 *
 * @param perKelvin by which share they grow with each kelvin
 * @param spanK by how many kelvins they may be warmer or colder
 */
public record WarmRails(double perKelvin, double spanK) {
  static final Source SOURCE = Source.common("rails' temperature");

  /**
   * @throws IllegalArgumentException when a value is out of its range
   */
  public WarmRails {
    Bound.check("the rails' expansion per kelvin", perKelvin, 1e-3);
    Bound.check("the rails' change of temperature in kelvins", spanK, 100);
  }

  double relativeU() {
    return perKelvin * spanK / Math.sqrt(3);
  }
}
