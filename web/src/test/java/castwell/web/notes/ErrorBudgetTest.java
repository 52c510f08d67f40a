package castwell.web.notes;

import static castwell.web.notes.Notes.says;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.air.Drag;
import castwell.analysis.air.StandardAtmosphere;
import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Budget;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Measurement;
import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.SpeedMeter;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The notes' error budget, reckoned with what reckons the speeds. */
class ErrorBudgetTest {
  private static final double SPACING_M = 0.6096;
  private static final double SPEED_MPS = 50;
  private static final double LENGTH_M = 0.74;
  private static final double HZ = 2e6;
  private static final TickRate PERFECT = new TickRate(HZ, 0);

  /** A source, and the setting that its row in the notes begins with. */
  private static final Map<String, String> BOUNDS =
      Map.of(
          "oblique path", "path_degrees",
          "rails' temperature", "rails_ppm_per_k",
          "gates' latencies", "latency_unlike_us",
          "gates out of parallel", "out_of_parallel_mm",
          "drag between the gates", "drag_percent_per_m");

  private final Map<String, List<String>> budget = Notes.table("error-budget.md", "source");
  private final Map<String, List<String>> biases = Notes.table("error-budget.md", "what");

  @Test
  void everyShareIsWhatTheSpeedMeterGives() {
    double half = 0.0005 / Math.sqrt(3);
    share("spacing known to ±0.5 mm", front(half, 0, 0, PERFECT));
    share("spacing with u = 0.3 mm, measured with care", front(0.0003, 0, 0, PERFECT));
    share(
        "spacing that nobody measured, u = 3.8 mm",
        front(Calibration.UNMEASURED_U_M, 0, 0, PERFECT));
    share("trigger 1 mm at each gate, front alone", front(0, 0.001, 0, PERFECT));
    share("trigger 1 mm at each gate, front and tail together", both(0, 0.001, PERFECT));
    share("trigger 2 mm at each gate, front alone", front(0, 0.002, 0, PERFECT));
    share("trigger 2 mm at each gate, front and tail together", both(0, 0.002, PERFECT));
    share("counter's step of 0.5 µs", front(0, 0, 0, PERFECT));
    share("one stamp late by 0 to 10 µs, and told so", front(0, 0, 20, PERFECT));
    TickRate crystal = TickRate.nominal(HZ, Oscillator.CRYSTAL);
    share("crystal, ±50 ppm, not measured", common(front(0, 0, 0, crystal)));
    TickRate resonator = TickRate.nominal(HZ, Oscillator.RESONATOR);
    share("resonator, ±0.5 %, not measured", common(front(0, 0, 0, resonator)));
    share("clock measured by heartbeats to 2 ppm", common(front(0, 0, 0, measured())));
    double carrier = 1 / 36e3 * Math.sqrt(2.0 / 12);
    says(cell("carrier of 36 kHz instead of steady light"), 100 * carrier * SPEED_MPS / SPACING_M);

    Calibration gates = gates(0.0003, 0.001).with(SetUpErrors.USUAL);
    Quantity careful = both(gates, measured());
    share("all own: trigger 1 mm, front and tail, counter's step", careful.only(Kind.OWN));
    share(
        "all common: spacing u = 0.3 mm, clock measured to 2 ppm, what no edge tells",
        careful.only(Kind.COMMON));
    share("both", careful);
    assertThat(budget).as("rows that nothing here reckons").isEmpty();
  }

  @Test
  void whatNoEdgeTellsIsAsTheSettingsBegin() {
    Map<String, List<String>> bounds = Notes.table("error-budget.md", "bound");
    Budget budget = asTheSettingsBegin();
    assertThat(bounds).hasSize(5);
    bounds.forEach((row, cells) -> says(cells.get(1), 100 * relativeU(budget, row)));

    SetUpErrors errors = SetUpErrors.USUAL;
    bound(bounds, "path_degrees", errors.path().greatestDegrees());
    bound(bounds, "rails_ppm_per_k", 1e6 * errors.rails().perKelvin());
    bound(bounds, "latency_unlike_us", 1e6 * errors.latencyUnlikeS());
    bound(bounds, "out_of_parallel_mm", 1e3 * errors.planes().outOfParallelM());
    bound(bounds, "drag_percent_per_m", 100 * errors.dragPerMetre());
    double t = Math.toRadians(3);
    assertThat(Notes.prose("error-budget.md"))
        .contains(
            String.format(
                Locale.ROOT,
                "%.3f %% and %.3f %% of 3 degrees",
                100 * t * t / 6,
                100 * t * t / Math.sqrt(20)))
        .contains(String.format(Locale.ROOT, "%.0f mm to a side", 609.6 * Math.tan(t)));
  }

  private static void bound(Map<String, List<String>> bounds, String setting, double value) {
    assertThat(bounds.entrySet())
        .filteredOn(row -> row.getKey().startsWith("`" + setting + "`"))
        .singleElement()
        .satisfies(row -> says(row.getValue().get(0), value));
  }

  private static double relativeU(Budget budget, String row) {
    return budget.shares().stream()
        .filter(share -> BOUNDS.get(share.source()) != null)
        .filter(share -> row.startsWith("`" + BOUNDS.get(share.source()) + "`"))
        .findFirst()
        .orElseThrow()
        .relativeU();
  }

  private static Budget asTheSettingsBegin() {
    Calibration gates =
        new Calibration(
                Calibration.UNTOUCHED_M, Calibration.UNTOUCHED_U_M, 0.001, 2, Oscillator.RESONATOR)
            .with(SetUpErrors.USUAL)
            .unmeasured();
    return Budget.of(gates, TickRate.nominal(HZ, Oscillator.RESONATOR));
  }

  @Test
  void theWholeBudgetIsToldAsItIs() {
    Map<String, List<String>> rows = Notes.table("error-budget.md", "in the budget");
    Budget budget = asTheSettingsBegin();
    Iterator<Map.Entry<String, List<String>>> told = rows.entrySet().iterator();
    for (Budget.Share share : budget.shares()) {
      Map.Entry<String, List<String>> row = told.next();
      assertThat(row.getKey()).isEqualTo(share.source());
      assertThat(row.getValue().get(2)).isEqualToIgnoringCase(share.kind().name());
      says(row.getValue().get(0), 100 * share.relativeU());
      says(row.getValue().get(1), SPEED_MPS * share.relativeU());
    }
    says(told.next().getValue().get(0), 100 * budget.relativeU(Kind.OWN));
    says(told.next().getValue().get(0), 100 * budget.relativeU(Kind.COMMON));
    says(told.next().getValue().get(0), 100 * budget.relativeU());
    says(rows.get("all own").get(1), SPEED_MPS * budget.relativeU(Kind.OWN));
    says(rows.get("all common").get(1), SPEED_MPS * budget.relativeU(Kind.COMMON));
    says(rows.get("both").get(1), SPEED_MPS * budget.relativeU());
  }

  @Test
  void everyBiasIsWhatItIsReckonedToBe() {
    says(
        bias("path 2 degrees off the line through the gates"),
        100 * (Math.cos(Math.toRadians(2)) - 1));
    says(
        bias("screens 1 mm out of parallel over 600 mm, arrow 100 mm from where you measured"),
        100 * (0.001 * 100 / 600) / SPACING_M);
    warmer("steel rails 20 K warmer than when measured", 12e-6);
    warmer("aluminium rails 20 K warmer", 23e-6);
    warmer("wood along the grain 20 K warmer", 5e-6);
    slower("one gate slower than the other by 1 µs", 1e-6);
    slower("one gate slower than the other by 10 µs", 10e-6);
    double k =
        Drag.lossPerMetre(
            Drag.LARGE_VANES,
            11.0 / 32 * 0.0254,
            500 * 64.79891e-6, // NIST SP 811: a grain is 64.798 91 mg
            StandardAtmosphere.density(0));
    says(bias("gates 3 m farther from the bow"), 100 * (Math.exp(-3 * k) - 1));
    assertThat(Notes.prose("error-budget.md"))
        .contains(String.format(Locale.ROOT, "k = %.5f per metre", k))
        .contains(String.format(Locale.ROOT, "drag of %.3f %% a metre", 100 * k));
    assertThat(biases).as("rows that nothing here reckons").isEmpty();
  }

  private void share(String row, Quantity speed) {
    says(cell(row), 100 * speed.standardUncertainty() / speed.value());
  }

  private String cell(String row) {
    return take(budget, row);
  }

  private String bias(String row) {
    return take(biases, row);
  }

  private static String take(Map<String, List<String>> rows, String row) {
    assertThat(rows).containsKey(row);
    return rows.remove(row).get(0);
  }

  /** Speed by a spacing measured cold against that by the true one. */
  private void warmer(String row, double perKelvin) {
    says(bias(row), 100 * (1 / (1 + 20 * perKelvin) - 1));
  }

  private void slower(String row, double seconds) {
    Measurement late =
        SpeedMeter.measure(passage(0), gates(0, 0), PERFECT, new StampLatency(seconds, 0));
    says(bias(row), 100 * Math.abs(late.front().orElseThrow().value() / SPEED_MPS - 1));
  }

  private static TickRate measured() {
    return new TickRate(HZ, 2e-6);
  }

  private static Quantity common(Quantity speed) {
    return speed.only(Kind.COMMON);
  }

  private static Quantity front(double spacingU, double triggerM, int late, TickRate rate) {
    Measurement m =
        SpeedMeter.measure(passage(late), gates(spacingU, triggerM), rate, StampLatency.NONE);
    return m.front().orElseThrow();
  }

  private static Quantity both(double spacingU, double triggerM, TickRate rate) {
    return both(gates(spacingU, triggerM), rate);
  }

  private static Quantity both(Calibration gates, TickRate rate) {
    return SpeedMeter.measure(passage(0), gates, rate, StampLatency.NONE).speed().orElseThrow();
  }

  private static Calibration gates(double spacingU, double triggerM) {
    return new Calibration(SPACING_M, spacingU, triggerM, 2, Oscillator.CRYSTAL);
  }

  private static Passage passage(int late) {
    long across = Math.round(SPACING_M / SPEED_MPS * HZ);
    long along = Math.round(LENGTH_M / SPEED_MPS * HZ);
    return Passage.of(
        List.of(
            new Edge(1, Gate.A, EdgeKind.BLOCKED, 0, 0),
            new Edge(2, Gate.B, EdgeKind.BLOCKED, across, late),
            new Edge(3, Gate.A, EdgeKind.CLEAR, along, 0),
            new Edge(4, Gate.B, EdgeKind.CLEAR, across + along, 0)));
  }
}
