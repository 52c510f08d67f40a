package castwell.web.report.bow;

import castwell.analysis.bow.Advice;
import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.Cast;
import castwell.analysis.bow.FitAdvice;
import castwell.analysis.bow.ForceDrawCurve;
import castwell.analysis.bow.VirtualMass;
import castwell.analysis.bow.VirtualMassFit;
import castwell.analysis.cell.CellSums;
import castwell.capture.cell.CellLedger;
import castwell.capture.measure.BowMeasure;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.web.report.BowCells;
import castwell.web.report.ReportRequest;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * What is known of one bow in one state.
 *
 * @param states all it was in, the first first
 * @param cells what it shot in the state looked at, strays set aside
 * @param model the fit as quantities, with what the set-ups have in common
 * @param cast empty where nothing tells one
 * @param curve its force-draw curve, where one was measured
 * @param advice what to shoot next
 */
public record BowStudy(
    BowState state,
    String stateName,
    List<BowState> states,
    BowSums cells,
    Optional<VirtualMassFit> fit,
    Optional<VirtualMass> model,
    Optional<Cast> cast,
    Optional<ForceDrawCurve> curve,
    List<Advice> advice) {

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
    BowSums cells = new BowSums(bow + ", " + name, bowCells.ledger().of(state));
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
    Optional<VirtualMass> model = cells.virtualMass();
    Optional<Cast> cast =
        model.map(m -> request.cast(m, state)).filter(c -> Double.isFinite(c.speedMps().value()));
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
        model,
        cast,
        curve,
        FitAdvice.of(cells, state.drawWeightN()));
  }
}
