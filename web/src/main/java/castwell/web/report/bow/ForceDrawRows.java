package castwell.web.report.bow;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;
import static castwell.web.unit.Dimension.DRAW_LENGTH;
import static castwell.web.unit.Dimension.ENERGY;

import castwell.analysis.bow.ForceDrawCurve;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellSummary;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.view.InUnits;
import castwell.capture.view.report.bow.StoredArrowView;
import castwell.capture.view.report.bow.StoredEnergyView;
import castwell.capture.word.Rounded;
import castwell.web.report.AnyDay;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportTable;
import castwell.web.report.Trade;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a bow's force-draw curve says of its shots; nothing where none was measured. */
final class ForceDrawRows {
  private static final ReportFormat SAYING = ReportFormat.TRADE;

  private static final List<ReportColumn<StoredArrowView>> COLUMNS =
      List.of(
          ReportColumn.text("arrow", "arrow", StoredArrowView::arrow),
          new ReportColumn<>("mass_gr", "mass gr", 0, StoredArrowView::massGr),
          new ReportColumn<>(
              "efficiency_percent", "efficiency %", 1, StoredArrowView::efficiencyPercent),
          new ReportColumn<>(
              "efficiency_ci95_percent", "95 %", 1, StoredArrowView::efficiencyCi95Percent),
          new ReportColumn<>(
              "virtual_mass_gr", "virtual mass gr", 0, StoredArrowView::virtualMassGr),
          new ReportColumn<>(
              "virtual_mass_ci95_gr", "95 % gr", 0, StoredArrowView::virtualMassCi95Gr));

  private final Optional<ForceDrawCurve> curve;
  private final List<StoredArrowView> rows;
  private final Optional<AnyDay> bow;

  private ForceDrawRows(
      Optional<ForceDrawCurve> curve, List<StoredArrowView> rows, Optional<AnyDay> bow) {
    this.curve = curve;
    this.rows = rows;
    this.bow = bow;
  }

  static ForceDrawRows of(Optional<ForceDrawCurve> curve, List<Cell> cells, Optional<AnyDay> bow) {
    List<StoredArrowView> rows =
        curve.stream()
            .flatMap(
                c ->
                    cells.stream()
                        .filter(cell -> !cell.shots().isEmpty())
                        .map(cell -> row(c, cell)))
            .toList();
    return new ForceDrawRows(curve, rows, bow);
  }

  private static StoredArrowView row(ForceDrawCurve curve, Cell cell) {
    CellSummary summary = CellSummary.of(cell);
    Quantity efficiency = curve.efficiency(summary.kineticEnergyJ()).only(Kind.OWN);
    Quantity virtual = curve.virtualMassKg(cell.massKg(), summary.ownMeanMps());
    return new StoredArrowView(
        cell.name().session(),
        cell.name().arrow(),
        Trade.in(KILOGRAMS_PER_GRAIN, cell.massKg()),
        Trade.value(0.01, efficiency),
        Trade.ci95(0.01, efficiency),
        Trade.value(KILOGRAMS_PER_GRAIN, virtual),
        Trade.ci95(KILOGRAMS_PER_GRAIN, virtual));
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
          bow.flatMap(known -> known.energy().energyJ(Trade.COVERAGE))
              .filter(energy -> energy.interval().low() > c.storedEnergyJ())
              .ifPresent(energy -> sentences.add(SAYING.say("report.bow.stores_too_little")));
        });
    return sentences;
  }

  private static double perPound(ForceDrawCurve curve) {
    return curve.energyPerDrawWeightM() / JOULES_PER_FOOT_POUND * NEWTONS_PER_POUND;
  }

  /** Empty without a curve. */
  Optional<StoredEnergyView> data() {
    return curve.map(
        c ->
            new StoredEnergyView(
                c.storedEnergyJ() / JOULES_PER_FOOT_POUND,
                c.trapezoidJ() / JOULES_PER_FOOT_POUND,
                perPound(c),
                c.fullness(),
                c.drawWeightN() / NEWTONS_PER_POUND,
                c.fullDrawM() / METRES_PER_INCH,
                c.isFromBrace(),
                InUnits.of(c.stacksAtM(), METRES_PER_INCH),
                InUnits.of(c.hysteresis(), 0.01),
                rows));
  }

  ReportTable<StoredArrowView> table() {
    return new ReportTable<>("By the stored energy", COLUMNS, rows);
  }
}
