package castwell.web.report.bow;

import castwell.analysis.bow.Advice;
import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.FitAdvice;
import castwell.analysis.bow.ForceDrawCurve;
import castwell.analysis.bow.VirtualMassFit;
import castwell.analysis.cell.CellSums;
import castwell.capture.cell.CellLedger;
import castwell.capture.measure.BowMeasure;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.web.report.AnyDay;
import castwell.web.report.BowCells;
import castwell.web.report.CastFigures;
import castwell.web.report.ReportRequest;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * What is known of one bow in one state.
 *
 * @param states all it was in, the first first
 * @param cells what it shot in the state looked at, strays set aside
 * @param fit by repeats alone, as if days didn't differ
 * @param anyDay what it does on any day; empty where no shot counts
 * @param cast likewise
 * @param forceDraw its force-draw curve, where one was measured
 * @param advice what to shoot next
 */
public record BowStudy(
    BowState state,
    String stateName,
    List<BowState> states,
    BowSums cells,
    Optional<VirtualMassFit> fit,
    Optional<AnyDay> anyDay,
    Optional<CastFigures> cast,
    Optional<ForceDrawCurve> forceDraw,
    List<Advice> advice) {
  private static final int LAST_CELLS = 60;

  /**
   * @param stateName the state to look at; the one that the bow is in now otherwise
   */
  public static BowStudy of(
      Transaction t, ZoneId zone, String bow, Optional<String> stateName, ReportRequest request) {
    BowCells bowCells = new BowCells(t, zone);
    var named = bowCells.bow(bow);
    BowState state =
        stateName.map(on -> bowCells.state(named, on)).orElseGet(() -> bowCells.now(named));
    String name = bowCells.name(state);
    BowSums cells =
        bowCells.asInSeason(state, new BowSums(bow + ", " + name, bowCells.ledger().of(state)));
    return of(bowCells, state, name, cells, request);
  }

  /** Its cells session by session, of its last sessions in that state. */
  public List<CellSums> sessions(Transaction t, ZoneId zone, int most) {
    Rack.Named bow = new Rack.Named(state.bowId(), state.bow());
    List<CellSums> sums =
        new CellLedger(t, zone)
            .ofBow(bow, most).stream()
                .filter(cell -> cell.name().state().equals(stateName) && !cell.isEmpty())
                .toList();
    return cells.areAtBow() ? sums : sums.stream().map(CellSums::atGates).toList();
  }

  static BowStudy of(
      BowCells bowCells, BowState state, String stateName, BowSums cells, ReportRequest request) {
    Optional<AnyDay> anyDay = AnyDay.of(bowCells.season(), state, stateName);
    List<ForceDrawCurve.Point> points =
        bowCells.transaction().forceDraws().last(state.bowId(), state.since());
    Optional<ForceDrawCurve> curve =
        points.isEmpty()
            ? Optional.empty()
            : Optional.of(
                ForceDrawCurve.of(points, state.measures().number(BowMeasure.BRACE_HEIGHT)));
    return new BowStudy(
        state,
        stateName,
        bowCells.transaction().rack().states(state.bowId()),
        cells,
        cells.fit(),
        anyDay,
        anyDay.map(known -> known.cast(request)),
        curve,
        FitAdvice.of(cells, lastDay(bowCells, cells, anyDay), state.drawWeightN()));
  }

  /** The cells of its last session alone, in which a curve that misses isn't the days' doing. */
  private static BowSums lastDay(BowCells bowCells, BowSums all, Optional<AnyDay> anyDay) {
    if (anyDay.isEmpty()) {
      return all;
    }
    BowState state = anyDay.get().state();
    String session = anyDay.get().lastDay().session();
    List<CellSums> then =
        bowCells.ledger().ofBow(new Rack.Named(state.bowId(), state.bow()), LAST_CELLS).stream()
            .filter(cell -> cell.name().session().equals(session))
            .filter(cell -> cell.name().state().equals(bowCells.name(state)))
            .toList();
    return bowCells.asInSeason(state, new BowSums(all.name(), then));
  }
}
