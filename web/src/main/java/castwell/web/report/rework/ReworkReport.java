package castwell.web.report.rework;

import castwell.capture.store.Transaction;
import castwell.capture.view.report.rework.ChangedArrow;
import castwell.capture.view.report.rework.ConditionView;
import castwell.capture.view.report.rework.ReworkReportView;
import castwell.web.report.BowCells;
import castwell.web.report.Report;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import castwell.web.report.ReportTable;
import java.time.ZoneId;
import java.util.List;

/** Whether a rework helped, by all days and bows, and which of the bow's two numbers moved. */
public final class ReworkReport {
  /**
   * What is asked.
   *
   * @param before a state of the bow, a session or a date, as is {@code after}
   * @param controls the only other bows that are to count; all that help where there are none
   */
  public record Question(String bow, String before, String after, List<String> controls) {}

  private ReworkReport() {}

  public static Report<ReworkReportView> of(
      Transaction t, ZoneId zone, Question question, ReportRequest request) {
    Reworked reworked = Reworked.of(t, zone, question);
    BowCells bowCells = new BowCells(t, zone);
    List<ConditionView> conditions = ConditionRows.of(bowCells, reworked, ReportFormat.TRADE);
    List<ChangedArrow> rows = ReworkRows.arrows(reworked);
    List<String> sentences = reworked.sentences(bowCells, conditions, request, ReportFormat.TRADE);
    return new Report<>(
        sentences,
        List.of(
            new ReportTable<>("Arrows shot before and after", ReworkRows.ARROWS, rows),
            new ReportTable<>("What else differed", ReworkRows.CONDITIONS, conditions)),
        new ReworkReportView(
            reworked.bow(),
            question.before(),
            question.after(),
            reworked.sides().before().stateName(),
            reworked.sides().after().stateName(),
            sentences,
            ReworkRows.rework(reworked),
            ReworkRows.sameGpp(reworked, request),
            rows,
            reworked.moved().map(ReworkRows::moved),
            conditions));
  }
}
