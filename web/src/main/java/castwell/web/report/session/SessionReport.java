package castwell.web.report.session;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.cell.Cell;
import castwell.analysis.compare.Drift;
import castwell.analysis.outlier.PooledStrays;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.cell.CellReader;
import castwell.capture.cell.SessionCells;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Transaction;
import castwell.web.report.CellRows;
import castwell.web.report.Fields;
import castwell.web.report.Report;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportTable;
import castwell.web.report.Strays;
import castwell.web.report.Trade;
import castwell.web.text.Speech;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** One outing: what was shot, what was set aside, and whether something drifted. */
public final class SessionReport {
  private static final double ALPHA = 0.05;

  private static final List<ReportColumn> ASIDE =
      List.of(
          ReportColumn.text("bow", "bow"),
          ReportColumn.text("arrow", "arrow"),
          ReportColumn.text("shot_id", "shot"),
          ReportColumn.text("reason", "reason"));

  private static final List<ReportColumn> FIRST =
      List.of(
          ReportColumn.text("bow", "bow"),
          new ReportColumn("difference_fps", "first shots less others ft/s", 1),
          new ReportColumn("ci95_fps", "95 % ft/s", 1),
          new ReportColumn("p", "p", 3));

  /**
   * What a page says of a session whose shots it lists itself.
   *
   * @param strays the shots that were set aside by the spread, by id
   */
  public record Told(List<String> sentences, Set<String> strays) {}

  private SessionReport() {}

  /**
   * @param name the last session begun otherwise
   */
  public static Report of(Transaction t, ZoneId zone, Optional<String> name) {
    Session session = session(t, name);
    SessionCells cells = new CellReader(t, zone).ofSession(session.name());
    return report(session, cells, ReportFormat.TRADE);
  }

  public static Told told(Transaction t, ZoneId zone, Session session, ReportFormat format) {
    SessionCells cells = new CellReader(t, zone).ofSession(session.name());
    return new Told(report(session, cells, format).sentences(), cells.strays());
  }

  private static Session session(Transaction t, Optional<String> name) {
    Optional<Session> found =
        name.isPresent()
            ? t.sessions().byName(name.get())
            : t.sessions().all().stream().findFirst();
    return found.orElseThrow(
        () ->
            name.map(n -> Refused.of(Why.NOT_FOUND, "refused.no_session_listed", n))
                .orElseGet(() -> Refused.of(Why.NOT_FOUND, "refused.no_session_yet")));
  }

  private static Report report(Session session, SessionCells found, ReportFormat format) {
    List<Cell> cells = found.cells();
    List<Map<String, Object>> rows = CellRows.of(cells);
    Optional<Quantity> drift = Drift.perHour(cells);
    List<Map<String, Object>> first = firstShots(cells);
    List<Map<String, Object>> aside = aside(cells);
    List<String> sentences = sentences(session, found, cells, drift, first, format);
    return new Report(
        sentences,
        List.of(
            new ReportTable("Cells", CellRows.COLUMNS_WITH_BOW, rows),
            new ReportTable("Set aside", ASIDE, aside),
            new ReportTable("First shots", FIRST, first)),
        new Fields()
            .put("session", session.name())
            .put("station", session.station())
            .put("sentences", sentences)
            .put("cells", rows)
            .put("set_aside", aside)
            .put("strays", Strays.rows(found))
            .put("pooled_sd_fps", Trade.in(METRES_PER_FOOT, found.findings().pooledSd()))
            .put("degrees_of_freedom", found.findings().degreesOfFreedom())
            .put("drift", drift.map(SessionReport::drift).orElse(null))
            .put("first_shots", first)
            .map());
  }

  private static Map<String, Object> drift(Quantity perHour) {
    return new Fields()
        .put("fps_per_hour", Trade.value(METRES_PER_FOOT, perHour))
        .put("ci95_fps_per_hour", Trade.ci95(METRES_PER_FOOT, perHour))
        .put("p", perHour.pValue())
        .map();
  }

  private static List<Map<String, Object>> aside(List<Cell> cells) {
    List<Map<String, Object>> rows = new ArrayList<>();
    for (Cell cell : cells) {
      cell.setAside()
          .forEach(
              aside ->
                  rows.add(
                      new Fields()
                          .put("bow", cell.name().bow())
                          .put("arrow", cell.name().arrow())
                          .put("shot_id", aside.shotId())
                          .put("reason", Speech.TRADE.say(aside.reasons()))
                          .map()));
    }
    return rows;
  }

  private static List<Map<String, Object>> firstShots(List<Cell> cells) {
    Map<String, List<Cell>> byBow = new LinkedHashMap<>();
    cells.forEach(
        cell -> byBow.computeIfAbsent(cell.name().bow(), b -> new ArrayList<>()).add(cell));
    List<Map<String, Object>> rows = new ArrayList<>();
    byBow.forEach(
        (bow, ofBow) ->
            Drift.firstShots(ofBow)
                .ifPresent(
                    difference ->
                        rows.add(
                            new Fields()
                                .put("bow", bow)
                                .put("difference_fps", Trade.value(METRES_PER_FOOT, difference))
                                .put("ci95_fps", Trade.ci95(METRES_PER_FOOT, difference))
                                .put("p", difference.pValue())
                                .map())));
    return rows;
  }

  private static List<String> sentences(
      Session session,
      SessionCells found,
      List<Cell> cells,
      Optional<Quantity> drift,
      List<Map<String, Object>> first,
      ReportFormat format) {
    int counting = cells.stream().mapToInt(cell -> cell.shots().size()).sum();
    int aside = cells.stream().mapToInt(cell -> cell.setAside().size()).sum();
    int strays = found.findings().excluded().size();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        format.say(
            strays == 0 ? "report.session.counted" : "report.session.counted_strays",
            session.name(),
            counting,
            cells.size(),
            aside,
            strays));
    if (found.findings().degreesOfFreedom() < PooledStrays.FEWEST_DEGREES) {
      sentences.add(format.say("report.session.no_strays"));
    } else {
      sentences.add(
          format.say(
              "report.session.scatter",
              format.plain(SPEED, 2, found.findings().pooledSd()),
              found.findings().degreesOfFreedom()));
    }
    drift.ifPresent(d -> sentences.add(drifted(d, format)));
    first.stream()
        .filter(row -> (Double) row.get("p") < ALPHA)
        .forEach(
            row ->
                sentences.add(
                    format.say(
                        "report.session.first_shots",
                        row.get("bow"),
                        Drift.FIRST_SHOTS,
                        format.plain(
                            SPEED, 1, (Double) row.get("difference_fps") * METRES_PER_FOOT))));
    return sentences;
  }

  private static String drifted(Quantity perHour, ReportFormat format) {
    String rate = format.said(SPEED, " " + format.say("report.session.an_hour"), 1, perHour);
    return format.say(
        perHour.pValue() < ALPHA ? "report.session.drifted" : "report.session.no_drift", rate);
  }
}
