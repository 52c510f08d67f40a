package castwell.web.report.rework;

import castwell.capture.store.Transaction;
import castwell.capture.view.report.rework.ChangedArrow;
import castwell.capture.view.report.rework.ConditionView;
import castwell.capture.view.report.rework.ReworkReportView;
import castwell.capture.view.report.rework.SameGppView;
import castwell.web.report.BowCells;
import castwell.web.report.Report;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import castwell.web.report.ReportTable;
import castwell.web.report.rework.Reworked.Pair;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** Whether a rework helped, what of it was the day, and which of the bow's two numbers moved. */
public final class ReworkReport {
  /**
   * What is asked.
   *
   * @param before a date or a session, as is {@code after}
   * @param controls bows to which nothing was done in between
   */
  public record Question(String bow, String before, String after, List<String> controls) {}

  private final BowCells bowCells;
  private final ZoneId zone;
  private final Question question;
  private final ReportRequest request;

  private ReworkReport(Transaction t, ZoneId zone, Question question, ReportRequest request) {
    this.bowCells = new BowCells(t, zone);
    this.zone = zone;
    this.question = question;
    this.request = request;
  }

  public static Report<ReworkReportView> of(
      Transaction t, ZoneId zone, Question question, ReportRequest request) {
    return new ReworkReport(t, zone, question, request).report();
  }

  private Report<ReworkReportView> report() {
    Reworked reworked = new ReworkStudy(bowCells, zone, question, request).reworked();
    Pair bow = reworked.bow();
    List<ConditionView> conditions = ConditionRows.of(bowCells, reworked, ReportFormat.TRADE);
    List<ChangedArrow> rows = new ArrayList<>(ReworkRows.of(reworked.change()));
    reworked.others().forEach(other -> rows.addAll(ReworkRows.of(other)));
    List<String> sentences = reworked.sentences(bowCells, conditions, request, ReportFormat.TRADE);
    return new Report<>(
        sentences,
        List.of(
            new ReportTable<>("Arrows shot on both days", ReworkRows.ARROWS, rows),
            new ReportTable<>("What else differed", ReworkRows.CONDITIONS, conditions)),
        new ReworkReportView(
            bow.before().bow(),
            question.before(),
            question.after(),
            bow.before().state(),
            bow.after().state(),
            reworked.controls(),
            sentences,
            ReworkRows.rework(reworked),
            reworked.sameGpp().map(q -> new SameGppView(ReworkRows.changed(q), request.gpp())),
            rows,
            reworked.moved().map(ReworkRows::moved),
            conditions));
  }
}
