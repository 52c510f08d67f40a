package castwell.web.report.bow;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;
import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.DRAW_LENGTH;
import static castwell.web.unit.Dimension.FORCE;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.FitAdvice;
import castwell.analysis.cell.Cell;
import castwell.analysis.unit.Units;
import castwell.capture.store.Rack;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.bow.BowReportView;
import castwell.capture.view.report.bow.ShareView;
import castwell.capture.view.report.cell.CastView;
import castwell.capture.view.report.cell.CellView;
import castwell.capture.word.Rounded;
import castwell.web.report.AnyDay;
import castwell.web.report.BowCells;
import castwell.web.report.CastFigures;
import castwell.web.report.CellRows;
import castwell.web.report.DayWords;
import castwell.web.report.GatesWords;
import castwell.web.report.Report;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import castwell.web.report.ReportTable;
import castwell.web.report.SpeedNote;
import castwell.web.report.Strays;
import castwell.web.report.Trade;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** One bow in one state: what it does to arrows, and why. */
public final class BowReport {
  private static final ReportFormat SAYING = ReportFormat.TRADE;

  private final BowCells bowCells;
  private final Rack.Named bow;
  private final BowCells.Stand stand;
  private final BowStudy study;
  private final List<Cell> shot;
  private final BowSums cells;
  private final FitRows fits;

  private BowReport(
      Transaction t, ZoneId zone, String name, Optional<String> state, ReportRequest request) {
    this.bowCells = new BowCells(t, zone);
    this.bow = bowCells.bow(name);
    this.stand =
        bowCells.stand(state.map(on -> bowCells.state(bow, on)).orElseGet(() -> bowCells.now(bow)));
    this.study = BowStudy.of(bowCells, stand.state(), stand.stateName(), stand.cells(), request);
    this.shot = stand.shot();
    this.cells = study.cells();
    this.fits = new FitRows(cells);
  }

  /**
   * @param state names the state, the one that the bow is in now otherwise
   */
  public static Report<BowReportView> of(
      Transaction t, ZoneId zone, String name, Optional<String> state, ReportRequest request) {
    return new BowReport(t, zone, name, state, request).report();
  }

  private Report<BowReportView> report() {
    List<CellView> rows = CellRows.of(shot, bowCells.season());
    Optional<AnyDay> anyDay = study.anyDay();
    double[] masses = cells.massesKg();
    List<ShareView> shares =
        anyDay.map(known -> AnyDayRows.shares(known, masses)).orElse(List.of());
    ForceDrawRows forceDraw = ForceDrawRows.of(study.forceDraw(), shot, anyDay);
    List<String> advice = AdviceWords.of(study.advice(), SAYING);
    SpeedNote speeds = SpeedNote.ofBows(Stream.of(cells));
    List<String> sentences = new ArrayList<>(speeds.in(answer(), bowCells.transaction(), SAYING));
    sentences.addAll(1, GatesWords.of(bowCells.transaction(), sessions(), SAYING));
    anyDay.ifPresent(
        known -> {
          sentences.add(AnyDayRows.sentence(known, SAYING));
          sentences.addAll(DayWords.of(known.season(), SAYING));
        });
    if (!shot.isEmpty()) {
      sentences.addAll(advice);
    }
    sentences.addAll(forceDraw.sentences());
    sentences.addAll(Strays.sentences(Strays.rows(stand), SAYING));
    sentences.addAll(cautions());
    BowReportView data =
        new BowReportView(
            bow.name(),
            stand.stateName(),
            Optional.of(stand.state().done()).filter(done -> !done.isEmpty()),
            stand.state().drawWeightN() / NEWTONS_PER_POUND,
            stand.state().drawLengthM() / METRES_PER_INCH,
            bowCells.states(bow).stream().filter(s -> !s.equals(stand.stateName())).toList(),
            sentences,
            rows,
            fits.straightLine(),
            anyDay.map(AnyDayRows::view),
            fits.virtualMass(),
            shares,
            study.cast().map(c -> casts(c, cells.areAtBow())),
            forceDraw.data(),
            advice,
            Strays.rows(stand));
    return new Report<>(
        sentences,
        List.of(
            new ReportTable<>("Cells", CellRows.COLUMNS, rows),
            new ReportTable<>(
                "Each mass on any day, and its share of the energy", AnyDayRows.SHARES, shares),
            forceDraw.table()),
        data);
  }

  private List<String> sessions() {
    return shot.stream().map(cell -> cell.name().session()).toList();
  }

  /** A cast, wherever one is told. */
  public static CastView casts(CastFigures cast, boolean isAtBow) {
    return new CastView(
        cast.gpp(),
        Trade.in(KILOGRAMS_PER_GRAIN, cast.massKg()),
        Trade.value(METRES_PER_FOOT, cast.anyDayMps()),
        Trade.ci95(METRES_PER_FOOT, cast.anyDayMps()),
        Trade.value(METRES_PER_FOOT, cast.todayMps()),
        Trade.ci95(METRES_PER_FOOT, cast.todayMps()),
        cast.today(),
        cast.isBeyondArrows(),
        SpeedNote.at(isAtBow));
  }

  private List<String> answer() {
    String who =
        SAYING.say(
            "report.bow.who",
            bow.name(),
            SAYING.plain(FORCE, 1, stand.state().drawWeightN()),
            SAYING.plain(DRAW_LENGTH, 1, stand.state().drawLengthM()),
            stand.stateName());
    if (study.cast().isEmpty()) {
      return List.of(SAYING.say("report.bow.no_shot", who));
    }
    CastFigures cast = study.cast().get();
    List<String> answer = new ArrayList<>();
    answer.add(
        SAYING.say(
            "report.bow.any_day",
            who,
            Rounded.to(0, cast.gpp()),
            SAYING.plain(ARROW_MASS, 0, cast.massKg()),
            SAYING.said(SPEED, 1, cast.anyDayMps()),
            study.anyDay().orElseThrow().sessions()));
    answer.add(
        SAYING.say("report.bow.today", cast.today(), SAYING.said(SPEED, 1, cast.todayMps())));
    if (cast.isBeyondArrows()) {
      answer.add(SAYING.say("report.bow.beyond_arrows"));
    }
    return answer;
  }

  /** The usual ones, where they apply. */
  private List<String> cautions() {
    List<String> cautions = new ArrayList<>();
    Set<String> told = new LinkedHashSet<>();
    for (Cell cell : shot) {
      double gpp = Units.grainsPerPound(cell.massKg(), stand.state().drawWeightN());
      if (gpp < FitAdvice.LEAST_GPP && told.add(cell.name().arrow())) {
        cautions.add(SAYING.say("report.bow.light_arrow", cell.name().arrow(), Rounded.to(1, gpp)));
      }
    }
    return cautions;
  }
}
