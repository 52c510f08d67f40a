package castwell.web.report.bow;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;

import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.LackOfFit;
import castwell.analysis.bow.VirtualMass;
import castwell.analysis.bow.VirtualMassFit;
import castwell.analysis.uncertainty.Kind;
import castwell.capture.view.report.bow.LackOfFitView;
import castwell.capture.view.report.bow.StraightLineView;
import castwell.capture.view.report.bow.VirtualMassView;
import castwell.web.report.Trade;
import java.util.Optional;

/** A bow's two curves of speed over mass by least squares, as if days didn't differ. */
final class FitRows {
  private static final double FPS_PER_GRAIN = METRES_PER_FOOT / KILOGRAMS_PER_GRAIN;

  private final BowSums cells;
  private final Optional<VirtualMassFit> fit;

  FitRows(BowSums cells) {
    this.cells = cells;
    this.fit = cells.fit();
  }

  /** Empty without two different masses. */
  Optional<StraightLineView> straightLine() {
    return cells
        .line()
        .map(
            line ->
                new StraightLineView(
                    Trade.in(METRES_PER_FOOT, line.intercept()),
                    Trade.in(METRES_PER_FOOT, line.interceptSe()),
                    Trade.in(FPS_PER_GRAIN, line.slope()),
                    Trade.in(FPS_PER_GRAIN, line.slopeSe()),
                    Trade.in(METRES_PER_FOOT, line.residualSd()),
                    line.degreesOfFreedom()));
  }

  /** Empty where there is no such curve, or one that no bow has. */
  Optional<VirtualMassView> virtualMass() {
    return fit.filter(f -> f.virtualMassKg() > 0)
        .map(f -> virtualMass(f, cells.virtualMass().orElseThrow()));
  }

  private static VirtualMassView virtualMass(VirtualMassFit fit, VirtualMass bow) {
    return new VirtualMassView(
        Trade.in(JOULES_PER_FOOT_POUND, fit.energyJ()),
        Trade.in(JOULES_PER_FOOT_POUND, fit.energySe()),
        Trade.ci95(JOULES_PER_FOOT_POUND, bow.energyJ().only(Kind.OWN)),
        Trade.u(JOULES_PER_FOOT_POUND, bow.energyJ().only(Kind.COMMON)),
        Trade.in(KILOGRAMS_PER_GRAIN, fit.virtualMassKg()),
        Trade.in(KILOGRAMS_PER_GRAIN, fit.virtualMassSe()),
        Trade.ci95(KILOGRAMS_PER_GRAIN, bow.virtualMassKg()),
        Trade.finite(fit.correlation()),
        Trade.in(METRES_PER_FOOT, fit.residualSdMps()),
        fit.degreesOfFreedom(),
        LackOfFit.of(fit).map(FitRows::lackOfFit));
  }

  private static LackOfFitView lackOfFit(LackOfFit lack) {
    return new LackOfFitView(
        Trade.finite(lack.f()), lack.lackDegrees(), lack.withinDegrees(), lack.pValue());
  }
}
