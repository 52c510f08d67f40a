package castwell.web.report.rework;

import castwell.capture.store.Transaction;
import castwell.web.report.BowCells;
import castwell.web.report.Fields;
import castwell.web.report.Report;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import castwell.web.report.ReportTable;
import castwell.web.report.rework.Reworked.Pair;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

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

  public static Report of(Transaction t, ZoneId zone, Question question, ReportRequest request) {
    return new ReworkReport(t, zone, question, request).report();
  }

  private Report report() {
    Reworked reworked = new ReworkStudy(bowCells, zone, question, request).reworked();
    Pair bow = reworked.bow();
    List<Map<String, Object>> conditions = ConditionRows.of(bowCells, reworked, ReportFormat.TRADE);
    List<Map<String, Object>> rows = new ArrayList<>(ReworkRows.of(reworked.change()));
    reworked.others().forEach(other -> rows.addAll(ReworkRows.of(other)));
    List<String> sentences =
        ReworkWords.of(reworked, request.gpp(), conditions, ReportFormat.TRADE);
    return new Report(
        sentences,
        List.of(
            new ReportTable("Arrows shot on both days", ReworkRows.ARROWS, rows),
            new ReportTable("What else differed", ReworkRows.CONDITIONS, conditions)),
        new Fields()
            .put("bow", bow.before().bow())
            .put("before", question.before())
            .put("after", question.after())
            .put("state_before", bow.before().state())
            .put("state_after", bow.after().state())
            .put("controls", reworked.controls())
            .put("sentences", sentences)
            .put("rework", ReworkRows.rework(reworked))
            .put(
                "same_gpp",
                reworked
                    .sameGpp()
                    .map(q -> ReworkRows.changed(q).put("gpp", request.gpp()).map())
                    .orElse(null))
            .put("arrows", rows)
            .put("what_moved", reworked.moved().map(ReworkRows::moved).orElse(null))
            .put("conditions", conditions)
            .map());
  }
}
