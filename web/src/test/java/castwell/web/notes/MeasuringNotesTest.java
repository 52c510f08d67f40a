package castwell.web.notes;

import static castwell.web.notes.Notes.says;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.gates.DropCheck;
import castwell.analysis.reading.Limits;
import castwell.analysis.speed.Calibration;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** What the notes say of measuring the spacing, of the falling rod, and of an arrow's limits. */
class MeasuringNotesTest {
  private static final double SPACING_M = 0.6096;
  private static final double GRAVITY = 9.80665; // ISO 80000-3: standard acceleration of free fall

  // JCGM 100:2008, 4.3.7 (rectangular, u = a / sqrt 3) and 5.1.2 (independent parts add as
  // squares).
  @Test
  void spacingsUncertaintyAddsUp() {
    Map<String, List<String>> parts = Notes.table("spacing.md", "part");
    double once = 0;
    double fiveTimes = 0;
    for (Map.Entry<String, List<String>> part : parts.entrySet()) {
      String bound = part.getValue().get(0);
      if (bound.isEmpty()) {
        continue;
      }
      double u = Double.parseDouble(bound.replaceAll("[± m]", "")) / Math.sqrt(3);
      says(part.getValue().get(1), u);
      boolean anew = part.getKey().contains(" read at ") || part.getKey().contains("half light");
      once += u * u;
      fiveTimes += anew ? u * u / 5 : u * u;
    }
    says(parts.get("all, measured once").get(1), Math.sqrt(once));
    says(parts.get("all, mean of five with the rule shifted").get(1), Math.sqrt(fiveTimes));
    assertThat(Notes.prose("spacing.md"))
        .contains(
            String.format(Locale.ROOT, "is %.3f %% of every speed", Math.sqrt(fiveTimes) / 6.096));
  }

  // JCGM 100:2008, 5.1.2: four triggers of 1 mm move a length's two blocked times, and its speed.
  @Test
  void arrowsAreARulerAsSureAsTheNotesSay() {
    double lengthMm = 740;
    double spacingMm = SPACING_M * 1e3;
    double oneShot = Math.hypot(1, lengthMm / spacingMm);
    assertThat(Notes.prose("spacing.md"))
        .contains(String.format(Locale.ROOT, "s = %.1f mm", oneShot));
    Map<String, List<String>> rows = Notes.table("spacing.md", "arrows of 740 mm");
    assertThat(rows).hasSize(3);
    rows.forEach(
        (arrows, cells) -> {
          double n = Double.parseDouble(arrows);
          double shots = n * Double.parseDouble(cells.get(0));
          double u2 = oneShot * oneShot / shots + 1 / n + 1.5 * 1.5;
          says(cells.get(1), spacingMm / lengthMm * Math.sqrt(u2));
        });
  }

  @Test
  void gatesThatNobodyMeasuredAreWhatTheProgramTakes() {
    Map<String, List<String>> parts = Notes.table("spacing.md", "put up by eye");
    double squares = 0;
    for (List<String> part : parts.values()) {
      String bound = part.get(0);
      if (!bound.isEmpty()) {
        double u = Double.parseDouble(bound.replaceAll("[± m]", "")) / Math.sqrt(3);
        says(part.get(1), u);
        squares += u * u;
      }
    }
    says(parts.get("all, measured by nobody").get(1), Math.sqrt(squares));
    assertThat(1e3 * Calibration.UNMEASURED_U_M).isCloseTo(Math.sqrt(squares), Offset.offset(0.05));
    assertThat(Notes.prose("spacing.md"))
        .contains(
            said(
                "takes 3.8 mm, %.2f %% of every speed",
                100 * Calibration.UNMEASURED_U_M / SPACING_M));
  }

  @Test
  void rodFallsAsTheProgramReckons() {
    Map<String, List<String>> drops = Notes.table("drop-check.md", "h");
    assertThat(drops).hasSize(4);
    drops.forEach(MeasuringNotesTest::drop);
  }

  private static void drop(String h, List<String> cells) {
    double heightM = Double.parseDouble(h.replace(" mm", "")) / 1e3;
    DropCheck check = check(heightM, SPACING_M);
    double seconds = check.measuredS().value();
    says(cells.get(0), 1e3 * seconds);
    says(cells.get(1), Math.sqrt(2 * GRAVITY * (heightM + SPACING_M)));
    // At +-0.5 mm, and so without the curve of t in h.
    double up = check(heightM + 0.0005, SPACING_M).measuredS().value();
    double down = check(heightM - 0.0005, SPACING_M).measuredS().value();
    says(cells.get(2), 100 * (up - down) / seconds);
    double u = check.relativeError().standardUncertainty();
    says(cells.get(3), 100 * u);
    double longer = check(heightM, SPACING_M * 1.0001).measuredS().value();
    double share = (longer / seconds - 1) / 1e-4;
    says(cells.get(4), 1.96 * u / share * SPACING_M * 1e3);
  }

  /** Of a rod that falls as it should. */
  private static DropCheck check(double heightM, double spacingM) {
    Quantity expected =
        DropCheck.expectedS(
            Quantity.of(heightM, 0.001, Source.common("drop")),
            Quantity.of(spacingM, 0.0003, Source.common("spacing")),
            Quantity.of(GRAVITY, 0.001, Source.common("gravity")),
            0.001);
    return new DropCheck(expected, Quantity.exact(expected.value()));
  }

  @Test
  void railsGrowAsTheirCoefficientSays() {
    Map<String, List<String>> rails = Notes.table("frame.md", "rails of");
    Map<String, Double> perKelvin =
        Map.of("steel", 12e-6, "aluminium", 23e-6, "wood along the grain", 5e-6); // from memory
    assertThat(rails.keySet()).isEqualTo(perKelvin.keySet());
    rails.forEach((rail, cells) -> says(cells.get(0), perKelvin.get(rail) * 20 * 609.6));
  }

  @Test
  void limitsOfAnArrowAreTheProgramsOwn() {
    Limits limits = Limits.defaults();
    assertThat(Notes.prose("fault-finding.md"))
        .contains(said("below %.0f m/s", limits.slowestMps()))
        .contains(said("above %.0f m/s", limits.fastestMps()))
        .contains(said("shorter than %.0f mm", 1e3 * limits.shortestM()))
        .contains(said("longer than %.0f mm", 1e3 * limits.longestM()))
        .contains(said("more than %.0f", limits.flutterEdges()));
  }

  private static String said(String format, double figure) {
    return String.format(Locale.ROOT, format, figure);
  }
}
