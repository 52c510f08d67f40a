package castwell.web.report;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellSummary;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.web.text.Speech;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Cells as rows: what was shot, what doesn't count and why, and what the rest says. */
public final class CellRows {
  /** Behind these come energy and momentum. */
  private static final int SPEEDS_END = 10;

  public static final List<ReportColumn> COLUMNS =
      List.of(
          ReportColumn.text("session", "session"),
          ReportColumn.text("arrow", "arrow"),
          new ReportColumn("mass_gr", "mass gr", 0),
          new ReportColumn("n", "n", 0),
          new ReportColumn("set_aside", "set aside", 0),
          new ReportColumn("mean_fps", "mean ft/s", 1),
          new ReportColumn("ci95_fps", "95 % ft/s", 1),
          new ReportColumn("common_u_fps", "common u ft/s", 1),
          new ReportColumn("sd_fps", "sd ft/s", 2),
          new ReportColumn("extreme_spread_fps", "spread ft/s", 1),
          new ReportColumn("kinetic_energy_ftlbf", "energy ft lbf", 1),
          new ReportColumn("kinetic_energy_ci95_ftlbf", "95 % ft lbf", 1),
          new ReportColumn("momentum_slug_fps", "momentum slug ft/s", 3),
          new ReportColumn("momentum_ci95_slug_fps", "95 % slug ft/s", 3));

  /** Who shot leads, where a table holds several bows. */
  public static final List<ReportColumn> COLUMNS_WITH_BOW =
      Stream.concat(
              Stream.of(ReportColumn.text("bow", "bow")), COLUMNS.subList(1, SPEEDS_END).stream())
          .toList();

  private CellRows() {}

  public static List<Map<String, Object>> of(List<Cell> cells) {
    return cells.stream().map(CellRows::of).toList();
  }

  private static Map<String, Object> of(Cell cell) {
    Fields row =
        new Fields()
            .put("bow", cell.name().bow())
            .put("state_on", cell.name().state())
            .put("session", cell.name().session())
            .put("arrow", cell.name().arrow())
            .put("mass_gr", Trade.in(KILOGRAMS_PER_GRAIN, cell.massKg()))
            .put("n", cell.shots().size())
            .put("set_aside", cell.setAside().size())
            .put("set_aside_reasons", reasons(cell))
            .put("alone", AloneRows.of(cell));
    return cell.shots().isEmpty() ? row.map() : summed(row, CellSummary.of(cell)).map();
  }

  private static List<Map<String, Object>> reasons(Cell cell) {
    return cell.setAside().stream()
        .map(
            aside ->
                new Fields()
                    .put("shot_id", aside.shotId())
                    .put("reason", Speech.TRADE.say(aside.reasons()))
                    .map())
        .toList();
  }

  /** The intervals are of repeats alone; what the set-up has in common stands beside them. */
  private static Fields summed(Fields row, CellSummary cell) {
    Quantity speed = cell.ownMeanMps();
    Quantity energy = cell.kineticEnergyJ();
    Quantity momentum = cell.momentumNs();
    return row.put("mean_fps", Trade.value(METRES_PER_FOOT, speed))
        .put("sd_fps", Trade.in(METRES_PER_FOOT, cell.sdMps()))
        .put("extreme_spread_fps", Trade.in(METRES_PER_FOOT, cell.extremeSpreadMps()))
        .put("ci95_fps", Trade.ci95(METRES_PER_FOOT, speed))
        .put("own_u_fps", Trade.u(METRES_PER_FOOT, speed))
        .put("common_u_fps", Trade.u(METRES_PER_FOOT, cell.meanMps().only(Kind.COMMON)))
        .put("gates_sd_fps", Trade.in(METRES_PER_FOOT, cell.gatesSdMps()))
        .put("kinetic_energy_ftlbf", Trade.value(JOULES_PER_FOOT_POUND, energy))
        .put("kinetic_energy_ci95_ftlbf", Trade.ci95(JOULES_PER_FOOT_POUND, energy.only(Kind.OWN)))
        .put("kinetic_energy_common_u_ftlbf", common(JOULES_PER_FOOT_POUND, energy))
        .put("momentum_slug_fps", Trade.value(NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND, momentum))
        .put(
            "momentum_ci95_slug_fps",
            Trade.ci95(NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND, momentum.only(Kind.OWN)))
        .put(
            "momentum_common_u_slug_fps",
            common(NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND, momentum));
  }

  private static Double common(double unit, Quantity quantity) {
    return Trade.u(unit, quantity.only(Kind.COMMON));
  }
}
