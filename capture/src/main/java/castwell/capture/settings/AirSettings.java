package castwell.capture.settings;

import castwell.analysis.air.Cipm2007;
import castwell.analysis.air.StandardAtmosphere;
import castwell.capture.wire.Sentence.Surroundings;

/**
 * The air to assume where the board has no sensor.
 *
 * @param altitudeM the height above sea level, from which the pressure follows by the standard
 *     atmosphere
 * @param celsius the temperature, in degrees C
 * @param relativeHumidity the relative humidity, 0 to 1
 */
public record AirSettings(double altitudeM, double celsius, double relativeHumidity) {

  /** The air's density in kg/m3, by the board's sensors where it has them. */
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
