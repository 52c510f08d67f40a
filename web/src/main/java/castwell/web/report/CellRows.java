package castwell.web.report;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellSummary;
import castwell.analysis.statistic.Mean;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.season.KnownSeason;
import castwell.capture.view.Interval95;
import castwell.capture.view.report.cell.AsideReason;
import castwell.capture.view.report.cell.CellFigures;
import castwell.capture.view.report.cell.CellView;
import castwell.web.text.Speech;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/** Cells as rows: what was shot, what doesn't count and why, and what the rest says. */
public final class CellRows {
  private static final ReportColumn<CellView> AT =
      ReportColumn.text("speed_at", "speed at", CellView::speedAt);

  /** Behind these come energy and momentum. */
  private static final int SPEEDS_END = 11;

  public static final List<ReportColumn<CellView>> COLUMNS =
      List.of(
          ReportColumn.text("session", "session", CellView::session),
          ReportColumn.text("arrow", "arrow", CellView::arrow),
          new ReportColumn<>("mass_gr", "mass gr", 0, CellView::massGr),
          new ReportColumn<>("n", "n", 0, CellView::n),
          new ReportColumn<>("set_aside", "set aside", 0, CellView::setAside),
          figure("mean_fps", "mean ft/s", 1, CellFigures::meanFps),
          figure("ci95_today_fps", "95 % today", 1, CellFigures::ci95TodayFps),
          figure("ci95_repeats_fps", "repeats alone", 1, CellFigures::ci95RepeatsFps),
          figure("common_u_fps", "common u ft/s", 1, CellFigures::commonUFps),
          figure("sd_fps", "sd ft/s", 2, CellFigures::sdFps),
          figure("extreme_spread_fps", "spread ft/s", 1, CellFigures::extremeSpreadFps),
          figure("kinetic_energy_ftlbf", "energy ft lbf", 1, CellFigures::kineticEnergyFtlbf),
          figure(
              "kinetic_energy_ci95_ftlbf", "95 % ft lbf", 1, CellFigures::kineticEnergyCi95Ftlbf),
          figure("momentum_slug_fps", "momentum slug ft/s", 3, CellFigures::momentumSlugFps),
          figure("momentum_ci95_slug_fps", "95 % slug ft/s", 3, CellFigures::momentumCi95SlugFps),
          AT);

  /** Who shot leads, where a table holds several bows. */
  public static final List<ReportColumn<CellView>> COLUMNS_WITH_BOW =
      Stream.of(
              List.of(ReportColumn.text("bow", "bow", CellView::bow)),
              COLUMNS.subList(1, SPEEDS_END),
              List.of(AT))
          .flatMap(List::stream)
          .toList();

  private CellRows() {}

  private static ReportColumn<CellView> figure(
      String key, String heading, int decimals, Function<CellFigures, Object> figure) {
    return new ReportColumn<>(key, heading, decimals, row -> row.figures().map(figure));
  }

  /**
   * @param season all bows' sessions, which tell how far each scatters
   */
  public static List<CellView> of(List<Cell> cells, Optional<KnownSeason> season) {
    return cells.stream().map(cell -> of(cell, season)).toList();
  }

  private static CellView of(Cell cell, Optional<KnownSeason> season) {
    return new CellView(
        cell.name().bow(),
        cell.name().state(),
        cell.name().session(),
        cell.name().arrow(),
        Trade.in(KILOGRAMS_PER_GRAIN, cell.massKg()),
        cell.shots().size(),
        cell.setAside().size(),
        reasons(cell),
        AloneRows.of(cell),
        cell.shots().isEmpty()
            ? Optional.empty()
            : Optional.of(figures(CellSummary.of(cell), today(cell, season))),
        SpeedNote.at(cell.atBow().isKnown()));
  }

  private static List<AsideReason> reasons(Cell cell) {
    return cell.setAside().stream()
        .map(aside -> new AsideReason(aside.shotId(), Speech.TRADE.say(aside.reasons())))
        .toList();
  }

  /** About the cell's own mean, wherever the season has the bow's speeds. */
  private static Interval95 today(Cell cell, Optional<KnownSeason> season) {
    return season
        .flatMap(known -> known.today(cell.name()))
        .map(log -> log.only(Kind.OWN).minus(Quantity.exact(log.value())))
        .map(log -> log.interval(Trade.COVERAGE))
        .map(
            log -> {
              double mean = Mean.of(cell.speedsMps());
              return new Interval(mean * Math.exp(log.low()), mean * Math.exp(log.high()));
            })
        .map(interval -> Trade.interval(METRES_PER_FOOT, interval))
        .orElse(Interval95.NOT_KNOWN);
  }

  private static CellFigures figures(CellSummary cell, Interval95 today) {
    Quantity speed = cell.ownMeanMps();
    Quantity energy = cell.kineticEnergyJ();
    Quantity momentum = cell.momentumNs();
    return new CellFigures(
        Trade.value(METRES_PER_FOOT, speed),
        Trade.in(METRES_PER_FOOT, cell.sdMps()),
        Trade.in(METRES_PER_FOOT, cell.extremeSpreadMps()),
        Trade.ci95(METRES_PER_FOOT, speed),
        today,
        Trade.u(METRES_PER_FOOT, speed),
        Trade.u(METRES_PER_FOOT, cell.meanMps().only(Kind.COMMON)),
        Trade.in(METRES_PER_FOOT, cell.gatesSdMps()),
        Trade.value(JOULES_PER_FOOT_POUND, energy),
        Trade.ci95(JOULES_PER_FOOT_POUND, energy.only(Kind.OWN)),
        common(JOULES_PER_FOOT_POUND, energy),
        Trade.value(NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND, momentum),
        Trade.ci95(NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND, momentum.only(Kind.OWN)),
        common(NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND, momentum));
  }

  private static OptionalDouble common(double unit, Quantity quantity) {
    return Trade.u(unit, quantity.only(Kind.COMMON));
  }
}
