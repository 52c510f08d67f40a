package castwell.web.report;

import castwell.analysis.season.StateCurve;
import castwell.analysis.season.StateEnergy;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.unit.Units;
import castwell.capture.season.KnownSeason;
import castwell.capture.season.KnownSeason.LastDay;
import castwell.capture.store.Rack.BowState;
import java.util.Optional;

/**
 * One bow in one state by all sessions: what it does on any day, and what it did on its last one.
 *
 * @param sessions in how many it was shot in this state
 */
public record AnyDay(
    BowState state, StateCurve curve, LastDay lastDay, int sessions, KnownSeason season) {

  /** Empty where no shot of it counts. */
  public static Optional<AnyDay> of(
      Optional<KnownSeason> season, BowState state, String stateName) {
    String bow = state.bow();
    return season.flatMap(
        known ->
            known
                .curve(bow, stateName)
                .map(
                    curve ->
                        new AnyDay(
                            state,
                            curve,
                            known.lastDay(bow, stateName).orElseThrow(),
                            known.sessions(bow, stateName),
                            known)));
  }

  public CastFigures cast(ReportRequest request) {
    double weight = state.drawWeightN();
    double massKg = request.gpp() * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP * weight;
    return new CastFigures(
        request.gpp(),
        massKg,
        curve
            .cast(request.gpp(), weight, request.scaleUN())
            .estimate(Trade.COVERAGE)
            .rising(Math::exp),
        lastDay.curve().speedMps(massKg, Trade.COVERAGE),
        lastDay.session(),
        curve.isBeyondArrows(massKg));
  }

  /** No bow's virtual mass is below zero, so neither are the ends told of it. */
  public static Estimate notBelowZero(Estimate mass) {
    return mass.rising(kg -> Math.max(0, kg));
  }

  public StateEnergy energy() {
    return curve.energy();
  }

  /** Whether the speeds are those at the bow, not those at the gates. */
  public boolean isAtBow() {
    return season.isAtBow(state.bow());
  }
}
