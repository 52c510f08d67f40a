package castwell.web.report.plan;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.ENERGY;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.compare.ShotOrder.Turn;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.plan.PlanReportView;
import castwell.capture.view.report.plan.PlannedTurn;
import castwell.capture.word.Rounded;
import castwell.web.report.Report;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportTable;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** How many shots see a change, with which arrows, in which order. */
public final class PlanReport {
  private static final List<ReportColumn<PlannedTurn>> COLUMNS =
      List.of(
          new ReportColumn<>("turn", "turn", 0, PlannedTurn::turn),
          new ReportColumn<>("block", "block", 0, PlannedTurn::block),
          ReportColumn.text("bow", "bow", PlannedTurn::bow),
          ReportColumn.text("arrow", "arrow", PlannedTurn::arrow));

  /**
   * What is planned.
   *
   * @param bows the first is the one to be reworked, the others are its controls
   * @param changeMps that should be seen
   * @param power how surely, between 0.05 and 1
   * @param sdMps one shot's scatter; from the bow's own shots where it isn't given
   * @param arrows by name; chosen by us where there are none
   * @param seed of the order
   */
  public record Wish(
      List<String> bows,
      double changeMps,
      double power,
      OptionalDouble sdMps,
      List<String> arrows,
      long seed) {

    /** As asked for in trade units, with what is usual where nothing is said. */
    public static Wish of(
        String bow,
        List<String> controls,
        OptionalDouble changeFps,
        OptionalDouble power,
        OptionalDouble sdFps,
        List<String> arrows,
        OptionalDouble seed) {
      List<String> bows = new ArrayList<>(List.of(bow));
      bows.addAll(controls);
      return new Wish(
          bows,
          changeFps.orElse(2) * METRES_PER_FOOT,
          power.orElse(0.8),
          sdFps.isPresent()
              ? OptionalDouble.of(sdFps.getAsDouble() * METRES_PER_FOOT)
              : OptionalDouble.empty(),
          arrows,
          (long) seed.orElse(1));
    }
  }

  private final ReportFormat format;
  private final PlanDesign design;
  private final Wish wish;

  private PlanReport(PlanDesign design, ReportFormat format) {
    this.format = format;
    this.design = design;
    this.wish = design.wish();
  }

  public static Report<PlanReportView> of(Transaction t, ZoneId zone, Wish wish) {
    return of(PlanDesign.of(t, zone, wish));
  }

  public static Report<PlanReportView> of(PlanDesign design) {
    return of(design, ReportFormat.TRADE);
  }

  public static Report<PlanReportView> of(PlanDesign design, ReportFormat format) {
    return new PlanReport(design, format).report();
  }

  private Report<PlanReportView> report() {
    List<PlannedTurn> rows = rows(design.order());
    List<String> sentences = sentences();
    return new Report<>(
        sentences,
        List.of(new ReportTable<>("Order", COLUMNS, rows)),
        new PlanReportView(
            sentences,
            design.shots(),
            design.exactShots(),
            design.cells(),
            wish.changeMps() / METRES_PER_FOOT,
            wish.power(),
            PlanDesign.ALPHA,
            design.sdMps() / METRES_PER_FOOT,
            wish.sdMps().isPresent()
                ? OptionalInt.empty()
                : OptionalInt.of(design.own().degreesOfFreedom()),
            design.bows(),
            design.arrows(),
            wish.seed(),
            rows));
  }

  private static List<PlannedTurn> rows(List<Turn> order) {
    List<PlannedTurn> rows = new ArrayList<>();
    for (Turn turn : order) {
      rows.add(new PlannedTurn(rows.size() + 1, turn.block(), turn.bow(), turn.arrow()));
    }
    return rows;
  }

  private List<String> sentences() {
    int shots = design.shots();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        format.say(
            design.cells() == 4 ? "report.plan.shots_with_control" : "report.plan.shots",
            format.plain(SPEED, 1, Math.abs(wish.changeMps())),
            Rounded.to(0, 100 * wish.power()),
            shots));
    sentences.add(
        wish.sdMps().isPresent()
            ? format.say("report.plan.scatter", format.plain(SPEED, 2, design.sdMps()))
            : format.say(
                "report.plan.scatter_own",
                format.plain(SPEED, 2, design.sdMps()),
                design.own().degreesOfFreedom()));
    if (design.cells() == 2) {
      sentences.add(format.say("report.plan.no_control"));
    }
    design
        .choice()
        .ifPresent(
            c ->
                sentences.add(
                    format.say(
                        "report.plan.precision",
                        String.join(", ", design.arrows()),
                        format.plain(ENERGY, 1, c.precision().energySe()),
                        format.plain(ARROW_MASS, 0, c.precision().virtualMassSe()))));
    if (shots > PlanDesign.MOST_BLOCKS) {
      sentences.add(format.say("report.plan.order_cut", PlanDesign.MOST_BLOCKS));
    }
    return sentences;
  }
}
