package castwell.web.report.bow;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;
import static castwell.web.unit.Dimension.DRAW_LENGTH;
import static castwell.web.unit.Dimension.ENERGY;

import castwell.analysis.bow.ForceDrawCurve;
import castwell.analysis.bow.VirtualMass;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellSummary;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.word.Rounded;
import castwell.web.report.Fields;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportTable;
import castwell.web.report.Trade;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a bow's force-draw curve says of its shots; nothing where none was measured. */
final class ForceDrawRows {
  private static final ReportFormat SAYING = ReportFormat.TRADE;

  private static final List<ReportColumn> COLUMNS =
      List.of(
          ReportColumn.text("arrow", "arrow"),
          new ReportColumn("mass_gr", "mass gr", 0),
          new ReportColumn("efficiency_percent", "efficiency %", 1),
          new ReportColumn("efficiency_ci95_percent", "95 %", 1),
          new ReportColumn("virtual_mass_gr", "virtual mass gr", 0),
          new ReportColumn("virtual_mass_ci95_gr", "95 % gr", 0));

  private final Optional<ForceDrawCurve> curve;
  private final List<Map<String, Object>> rows;
  private final Optional<VirtualMass> model;

  private ForceDrawRows(
      Optional<ForceDrawCurve> curve, List<Map<String, Object>> rows, Optional<VirtualMass> model) {
    this.curve = curve;
    this.rows = rows;
    this.model = model;
  }

  static ForceDrawRows of(
      Optional<ForceDrawCurve> curve, List<Cell> cells, Optional<VirtualMass> model) {
    List<Map<String, Object>> rows =
        curve.stream()
            .flatMap(
                c ->
                    cells.stream()
                        .filter(cell -> !cell.shots().isEmpty())
                        .map(cell -> row(c, cell)))
            .toList();
    return new ForceDrawRows(curve, rows, model);
  }

  private static Map<String, Object> row(ForceDrawCurve curve, Cell cell) {
    CellSummary summary = CellSummary.of(cell);
    Quantity efficiency = curve.efficiency(summary.kineticEnergyJ()).only(Kind.OWN);
    Quantity virtual = curve.virtualMassKg(cell.massKg(), summary.ownMeanMps());
    return new Fields()
        .put("session", cell.name().session())
        .put("arrow", cell.name().arrow())
        .put("mass_gr", Trade.in(KILOGRAMS_PER_GRAIN, cell.massKg()))
        .put("efficiency_percent", Trade.value(0.01, efficiency))
        .put("efficiency_ci95_percent", Trade.ci95(0.01, efficiency))
        .put("virtual_mass_gr", Trade.value(KILOGRAMS_PER_GRAIN, virtual))
        .put("virtual_mass_ci95_gr", Trade.ci95(KILOGRAMS_PER_GRAIN, virtual))
        .map();
  }

  List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    curve.ifPresent(
        c -> {
          sentences.add(
              SAYING.say(
                  c.stacksAtM().isPresent() ? "report.bow.stores_and_stacks" : "report.bow.stores",
                  SAYING.plain(DRAW_LENGTH, 1, c.fullDrawM()),
                  SAYING.plain(ENERGY, 1, c.storedEnergyJ()),
                  Rounded.to(2, perPound(c)),
                  SAYING.plain(DRAW_LENGTH, 1, c.stacksAtM().orElse(0))));
          if (!c.isFromBrace()) {
            sentences.add(SAYING.say("report.bow.not_from_brace"));
          }
          model
              .filter(m -> m.energyJ().interval(Trade.COVERAGE).low() > c.storedEnergyJ())
              .ifPresent(m -> sentences.add(SAYING.say("report.bow.stores_too_little")));
        });
    return sentences;
  }

  private static double perPound(ForceDrawCurve curve) {
    return curve.energyPerDrawWeightM() / JOULES_PER_FOOT_POUND * NEWTONS_PER_POUND;
  }

  /** Null without a curve. */
  Map<String, Object> data() {
    return curve
        .map(
            c ->
                new Fields()
                    .put("stored_energy_ftlbf", c.storedEnergyJ() / JOULES_PER_FOOT_POUND)
                    .put("stored_energy_trapezoid_ftlbf", c.trapezoidJ() / JOULES_PER_FOOT_POUND)
                    .put("energy_per_pound_ftlbf", perPound(c))
                    .put("fullness", c.fullness())
                    .put("draw_weight_lb", c.drawWeightN() / NEWTONS_PER_POUND)
                    .put("full_draw_in", c.fullDrawM() / METRES_PER_INCH)
                    .put("from_brace_height", c.isFromBrace())
                    .put("stacks_at_in", optional(METRES_PER_INCH, c.stacksAtM()))
                    .put("hysteresis_percent", optional(0.01, c.hysteresis()))
                    .put("arrows", rows)
                    .map())
        .orElse(null);
  }

  private static Double optional(double unit, OptionalDouble value) {
    return value.isPresent() ? (Double) (value.getAsDouble() / unit) : null;
  }

  ReportTable table() {
    return new ReportTable("By the stored energy", COLUMNS, rows);
  }
}
