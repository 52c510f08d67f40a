package castwell.web.report.session;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellShot;
import castwell.analysis.compare.Drift;
import castwell.analysis.compare.Drift.FirstShots;
import castwell.analysis.compare.PooledSpread;
import castwell.analysis.gates.GateFindings;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.cell.CellReader;
import castwell.capture.cell.SessionCells;
import castwell.capture.cell.SessionCells.Stray;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.gates.SessionGates;
import castwell.capture.season.KnownSeason;
import castwell.capture.season.SeasonLedger;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.cell.CellView;
import castwell.capture.view.report.session.AsideView;
import castwell.capture.view.report.session.DriftView;
import castwell.capture.view.report.session.FirstShotsView;
import castwell.capture.view.report.session.SessionReportView;
import castwell.capture.view.report.session.SideBySideView;
import castwell.capture.word.Lasting;
import castwell.web.report.CellRows;
import castwell.web.report.DayWords;
import castwell.web.report.GatesWords;
import castwell.web.report.Report;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportTable;
import castwell.web.report.SpeedNote;
import castwell.web.report.Strays;
import castwell.web.report.Trade;
import castwell.web.text.Speech;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;

/** One outing: what was shot, what was set aside, and whether something drifted. */
public final class SessionReport {
  /**
   * A maker looks at many sessions, and what is said of one of them should seldom be chance (common
   * practice, no source).
   */
  private static final double ALPHA = 0.01;

  private static final double SECONDS_PER_HOUR = 3600;

  private static final List<ReportColumn<AsideView>> ASIDE =
      List.of(
          ReportColumn.text("bow", "bow", AsideView::bow),
          ReportColumn.text("arrow", "arrow", AsideView::arrow),
          ReportColumn.text("shot_id", "shot", AsideView::shotId),
          ReportColumn.text("reason", "reason", AsideView::reason));

  private static final List<ReportColumn<FirstShotsView>> FIRST =
      List.of(
          ReportColumn.text("bow", "bow", FirstShotsView::bow),
          new ReportColumn<>(
              "difference_fps", "first shots less others ft/s", 1, FirstShotsView::differenceFps),
          new ReportColumn<>("ci95_fps", "95 % ft/s", 1, FirstShotsView::ci95Fps),
          new ReportColumn<>("p_holm", "p (Holm)", 3, FirstShotsView::pHolm));

  /**
   * What a page says of a session whose shots it lists itself.
   *
   * @param strays the shots that are set aside as strays, and those that are doubted
   */
  public record Told(List<String> sentences, List<Stray> strays) {}

  private SessionReport() {}

  /**
   * @param name the last session begun otherwise
   */
  public static Report<SessionReportView> of(Transaction t, ZoneId zone, Optional<String> name) {
    Session session = session(t, name);
    SessionCells cells = new CellReader(t, zone).ofSession(session.name());
    return report(
        t,
        session,
        cells,
        SeasonLedger.of(t, zone),
        SessionGates.of(t, session),
        ReportFormat.TRADE);
  }

  /**
   * @param gates what the session tells of its gates
   */
  public static Told told(
      Transaction t,
      ZoneId zone,
      Session session,
      Optional<GateFindings> gates,
      ReportFormat format) {
    SessionCells cells = new CellReader(t, zone).ofSession(session.name());
    return new Told(
        report(t, session, cells, SeasonLedger.of(t, zone), gates, format).sentences(),
        cells.strays());
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

  private static Report<SessionReportView> report(
      Transaction t,
      Session session,
      SessionCells found,
      Optional<KnownSeason> season,
      Optional<GateFindings> gates,
      ReportFormat format) {
    List<Cell> cells = found.cells();
    PooledSpread spread = PooledSpread.of(cells);
    List<CellView> rows = CellRows.of(cells, season);
    Optional<Quantity> drift = Drift.perHour(cells);
    List<FirstShotsView> first = firstShots(cells);
    List<AsideView> aside = aside(cells);
    List<String> sentences =
        new ArrayList<>(
            SpeedNote.ofCells(cells.stream())
                .in(sentences(session, found, spread, drift, first, format), t, format));
    sentences.addAll(1, GatesWords.of(gates, format));
    sentences.addAll(DayWords.ofSession(season, session.name(), format));
    List<SideBySideView> sideBySide = SideBySide.rows(cells, season);
    return new Report<>(
        sentences,
        List.of(
            new ReportTable<>("Cells", CellRows.COLUMNS_WITH_BOW, rows),
            new ReportTable<>("Side by side that day, same arrows", SideBySide.COLUMNS, sideBySide),
            new ReportTable<>("Set aside", ASIDE, aside),
            new ReportTable<>("First shots", FIRST, first)),
        new SessionReportView(
            session.name(),
            session.station(),
            sentences,
            rows,
            sideBySide,
            aside,
            Strays.rows(found),
            Trade.in(METRES_PER_FOOT, spread.sdMps()),
            spread.degreesOfFreedom(),
            drift.map(SessionReport::drift),
            first));
  }

  private static DriftView drift(Quantity perHour) {
    return new DriftView(
        Trade.value(METRES_PER_FOOT, perHour),
        Trade.ci95(METRES_PER_FOOT, perHour),
        perHour.pValue());
  }

  private static List<AsideView> aside(List<Cell> cells) {
    List<AsideView> rows = new ArrayList<>();
    for (Cell cell : cells) {
      cell.setAside()
          .forEach(
              aside ->
                  rows.add(
                      new AsideView(
                          cell.name().bow(),
                          cell.name().arrow(),
                          aside.shotId(),
                          Speech.TRADE.say(aside.reasons()))));
    }
    return rows;
  }

  private static List<FirstShotsView> firstShots(List<Cell> cells) {
    return Drift.firstShotsByBow(cells).stream().map(SessionReport::firstShots).toList();
  }

  private static FirstShotsView firstShots(FirstShots first) {
    Quantity difference = first.differenceMps();
    return new FirstShotsView(
        first.bow(),
        Trade.value(METRES_PER_FOOT, difference),
        Trade.ci95(METRES_PER_FOOT, difference),
        first.adjustedP());
  }

  private static List<String> sentences(
      Session session,
      SessionCells found,
      PooledSpread spread,
      Optional<Quantity> drift,
      List<FirstShotsView> first,
      ReportFormat format) {
    List<Cell> cells = found.cells();
    int counting = cells.stream().mapToInt(cell -> cell.shots().size()).sum();
    int aside = cells.stream().mapToInt(cell -> cell.setAside().size()).sum();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        format.say("report.session.counted", session.name(), counting, cells.size(), aside));
    sentences.addAll(Strays.sentences(Strays.rows(found), format));
    if (spread.degreesOfFreedom() > 0) {
      sentences.add(
          format.say(
              "report.session.scatter",
              format.plain(SPEED, 2, spread.sdMps()),
              spread.degreesOfFreedom()));
    }
    long tooSmall = found.all().stream().filter(SessionReport::isTooSmall).count();
    if (tooSmall > 0) {
      sentences.add(format.say("report.session.too_small", tooSmall));
    }
    drift.ifPresent(perHour -> sentences.add(drifted(perHour, shot(cells), format)));
    first.stream()
        .filter(row -> row.pHolm() < ALPHA)
        .forEach(
            row ->
                sentences.add(
                    format.say(
                        "report.session.first_shots",
                        row.bow(),
                        Drift.FIRST_SHOTS,
                        format.plain(
                            SPEED, 1, row.differenceFps().orElseThrow() * METRES_PER_FOOT))));
    return sentences;
  }

  /** Of one shot or two none can be told to be the stray. */
  private static boolean isTooSmall(Cell cell) {
    return cell.shots().size() == 1 || cell.shots().size() == 2;
  }

  /** Over the time that was shot, since nobody knows how it would have gone on. */
  private static String drifted(Quantity perHour, Duration shot, ReportFormat format) {
    Quantity drift = perHour.times(shot.toSeconds() / SECONDS_PER_HOUR);
    return format.say(
        drift.pValue() < ALPHA ? "report.session.drifted" : "report.session.no_drift",
        format.said(SPEED, 1, drift),
        format.speech().say(Lasting.words(shot)));
  }

  private static Duration shot(List<Cell> cells) {
    DoubleSummaryStatistics fired =
        cells.stream()
            .flatMap(cell -> cell.shots().stream())
            .mapToDouble(CellShot::firedS)
            .summaryStatistics();
    return Duration.ofSeconds(Math.round(fired.getMax() - fired.getMin()));
  }
}
