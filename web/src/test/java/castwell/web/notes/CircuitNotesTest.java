package castwell.web.notes;

import static castwell.web.notes.Notes.says;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the notes say of light and thresholds, from the values of their own parts. By reasoning. */
class CircuitNotesTest {
  private static final double R1 = 100e3;
  private static final double R2 = 2.2e6;
  private static final double R3 = 22e6;
  private static final double R4 = 4.7e6;
  private static final double R5 = 10e3;
  private static final double SUPPLY_V = 5;
  private static final double LIT_V = 1.5;
  private static final double SHAFT_MM = 11.0 / 32 * 25.4;
  private static final double IRRADIANCE = 0.1 / (0.6 * 0.6);

  @Test
  void thresholdsFollowFromTheResistors() {
    Map<String, List<String>> rows = Notes.table("parts.md", "light S");
    assertThat(rows).hasSize(4);
    rows.forEach(
        (light, cells) -> {
          double volts = Double.parseDouble(light.replace(" V", ""));
          says(cells.get(0), 1e3 * falls(volts));
          says(cells.get(1), 1e3 * (volts - reference(volts) - volts * R5 / (R4 + R5)));
        });
    assertThat(Notes.prose("parts.md"))
        .contains("keeps N at " + Math.round(1e3 * reference(0)) + " mV in the dark")
        .contains(said("= %.2f of one", falls(LIT_V) / (LIT_V / Screen.DIODES)));
  }

  @Test
  void amplifierFollowsFromItsParts() {
    double farads = Screen.DIODES * 72e-12 + 20e-12;
    double amperes = Screen.DIODES * IRRADIANCE * 7.5e-6 * 0.6;
    assertThat(Notes.prose("parts.md"))
        .contains(said("= %.0f kHz", Math.sqrt(10e6 / (2 * Math.PI * 100e3 * farads)) / 1e3))
        .contains(said("= %.1f pF", Math.sqrt(farads / (2 * Math.PI * 100e3 * 10e6)) * 1e12))
        .contains(said("%.0f µA ([optics.md]", amperes * 1e6))
        .contains(said("= %.1f V of 5 V", amperes * 100e3))
        .contains(said("of 1023 that is %.0f", amperes * 100e3 / SUPPLY_V * 1023))
        .contains(said("39 Ω = %.0f mA", (SUPPLY_V - 1.35) / 39 * 1e3))
        .contains(said("139 = %.0f mA", (SUPPLY_V - 1.35) / 139 * 1e3));
  }

  @Test
  void strayLightFollowsFromWhatAPhotodiodeSees() {
    double steradian = 4.0 / 60 * 2 * Math.sin(Math.toRadians(40));
    Map<String, List<String>> rows = Notes.table("optics.md", "what lies in the strip");
    assertThat(rows).hasSize(3);
    rows.forEach(
        (what, cells) -> {
          double sun = what.contains("a tenth") ? 25 : 250;
          double stray = sun * Double.parseDouble(cells.get(0)) / Math.PI * steradian;
          says(cells.get(1), stray);
          says(cells.get(2), stray / IRRADIANCE);
        });
  }

  @Test
  void placeOfTheTriggerFollowsFromTheShadow() {
    Map<String, List<String>> rows =
        Notes.table("optics.md", "point, from tip to full width of 8.73 mm");
    assertThat(rows).hasSize(6);
    rows.forEach(CircuitNotesTest::trigger);
  }

  private static void trigger(String point, List<String> cells) {
    double coneMm = point.contains("20 mm") ? 20 : 10;
    double stray = point.contains("no stray") ? 0 : point.contains("an eighth") ? 1.0 / 8 : 1;
    double light = LIT_V * (1 + stray);
    double coveredMm = falls(light) / (LIT_V / Screen.DIODES) * Screen.DIODE_MM;
    double[] places = new double[2000];
    for (int i = 0; i < places.length; i++) {
      double offset = (i + 0.5) / places.length * Screen.PITCH_MM / 2;
      places[i] =
          Screen.shadowFor(coveredMm, Screen.placeMm(30) + offset)
              / Screen.MAGNIFIED
              / SHAFT_MM
              * coneMm;
    }
    double mean = Arrays.stream(places).average().orElseThrow();
    double square = 0;
    for (double place : places) {
      square += (place - mean) * (place - mean);
    }
    String[] range = cells.get(0).split(" to ");
    says(range[0], Arrays.stream(places).min().orElseThrow());
    says(range[1], Arrays.stream(places).max().orElseThrow());
    says(cells.get(1), mean);
    says(cells.get(2), Math.sqrt(square / places.length));
  }

  private static double falls(double light) {
    return light - reference(light) + (SUPPLY_V - light) * R5 / (R4 + R5);
  }

  private static double reference(double light) {
    return (light / R1 + SUPPLY_V / R3) / (1 / R1 + 1 / R2 + 1 / R3);
  }

  private static String said(String format, double figure) {
    return String.format(Locale.ROOT, format, figure);
  }
}
