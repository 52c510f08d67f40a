package castwell.web.report.plan;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.ENERGY;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.compare.ShotOrder.Turn;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.plan.PlanReportView;
import castwell.capture.view.report.plan.PlannedTurn;
import castwell.web.report.Report;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportTable;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** How many sessions and shots see a change, with which arrows, in which order. */
public final class PlanReport {
  private static final List<ReportColumn<PlannedTurn>> COLUMNS =
      List.of(
          new ReportColumn<>("turn", "turn", 0, PlannedTurn::turn),
          new ReportColumn<>("block", "block", 0, PlannedTurn::block),
          ReportColumn.text("bow", "bow", PlannedTurn::bow),
          ReportColumn.text("arrow", "arrow", PlannedTurn::arrow));

  private final Transaction t;
  private final ReportFormat format;
  private final PlanDesign design;
  private final Wish wish;

  private PlanReport(Transaction t, PlanDesign design, ReportFormat format) {
    this.t = t;
    this.format = format;
    this.design = design;
    this.wish = design.wish();
  }

  public static Report<PlanReportView> of(Transaction t, ZoneId zone, Wish wish) {
    return of(t, PlanDesign.of(t, zone, wish), ReportFormat.TRADE);
  }

  public static Report<PlanReportView> of(Transaction t, PlanDesign design, ReportFormat format) {
    return new PlanReport(t, design, format).report();
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
            design.size().mps() / METRES_PER_FOOT,
            design.size().share() * 100,
            wish.power(),
            PlanDesign.ALPHA,
            design.sdMps() / METRES_PER_FOOT,
            wish.sdMps().isPresent()
                ? OptionalInt.empty()
                : OptionalInt.of(design.own().degreesOfFreedom()),
            design.bows(),
            design.arrows(),
            OverDaysRows.of(design.days()),
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
    String change = format.plain(SPEED, 1, Math.abs(design.size().mps()));
    List<String> sentences = new ArrayList<>(OverDaysRows.sentences(design, change, format));
    sentences.add(format.say("report.plan.afternoon", shots));
    sentences.add(
        wish.sdMps().isPresent()
            ? format.say("report.plan.scatter", format.plain(SPEED, 2, design.sdMps()))
            : format.say(
                "report.plan.scatter_own",
                format.plain(SPEED, 2, design.sdMps()),
                design.own().degreesOfFreedom()));
    if (design.size().isSpeedAssumed()) {
      sentences.add(
          format.say(
              "report.plan.speed_assumed", format.plain(SPEED, 0, design.size().speedMps())));
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
    if (design.blocks() > PlanDesign.MOST_BLOCKS) {
      sentences.add(format.say("report.plan.order_cut", PlanDesign.MOST_BLOCKS));
    }
    return design.speedNote(sentences, t, format);
  }
}
