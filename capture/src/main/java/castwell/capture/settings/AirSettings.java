package castwell.capture.settings;

import castwell.analysis.air.Cipm2007;
import castwell.analysis.air.StandardAtmosphere;
import castwell.capture.wire.Sentence.Surroundings;

/**
 * The air to assume where the board has no sensor.
 *
 * @param altitudeM above sea level; the pressure is the standard atmosphere's there
 * @param celsius temperature
 * @param relativeHumidity 0 to 1
 */
public record AirSettings(double altitudeM, double celsius, double relativeHumidity) {

  /** In kg/m3, with what the board's sensors say where it has them. */
  public double density(Surroundings measured) {
    double temperature =
        measured.airCentiC().isPresent() ? measured.airCentiC().getAsInt() / 100.0 : celsius;
    double humidity =
        measured.humidityCentiPercent().isPresent()
            ? measured.humidityCentiPercent().getAsInt() / 10_000.0
            : relativeHumidity;
    return Cipm2007.density(
        temperature, StandardAtmosphere.pressurePa(altitudeM), humidity, Cipm2007.ORDINARY_CO2);
  }
}
