package castwell.web.report.bow;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.ENERGY;

import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.JointRegion;
import castwell.analysis.bow.LackOfFit;
import castwell.analysis.bow.VirtualMass;
import castwell.analysis.bow.VirtualMassFit;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.view.report.bow.CornerView;
import castwell.capture.view.report.bow.LackOfFitView;
import castwell.capture.view.report.bow.ShareView;
import castwell.capture.view.report.bow.StraightLineView;
import castwell.capture.view.report.bow.VirtualMassView;
import castwell.capture.word.Rounded;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.Trade;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A bow's two curves of speed over mass, and what follows from the second. */
final class FitRows {
  static final List<ReportColumn<ShareView>> SHARES =
      List.of(
          new ReportColumn<>("mass_gr", "mass gr", 0, ShareView::massGr),
          new ReportColumn<>("speed_fps", "speed ft/s", 1, ShareView::speedFps),
          new ReportColumn<>("speed_ci95_fps", "95 % ft/s", 1, ShareView::speedCi95Fps),
          new ReportColumn<>("share_percent", "share %", 1, ShareView::sharePercent),
          new ReportColumn<>("share_ci95_percent", "95 %", 1, ShareView::shareCi95Percent));

  private static final double FPS_PER_GRAIN = METRES_PER_FOOT / KILOGRAMS_PER_GRAIN;

  private final BowSums cells;
  private final Optional<VirtualMassFit> fit;
  private final Optional<VirtualMass> model;

  FitRows(BowSums cells, Optional<VirtualMass> model) {
    this.cells = cells;
    this.fit = cells.fit();
    this.model = model;
  }

  /** E and K come as a pair, so they are told as one. */
  String sentence(VirtualMass bow) {
    double correlation = fit.orElseThrow().correlation();
    return ReportFormat.TRADE.say(
        Double.isNaN(correlation) ? "report.bow.pair" : "report.bow.pair_correlated",
        ReportFormat.TRADE.said(ENERGY, 1, bow.energyJ().only(Kind.OWN)),
        ReportFormat.TRADE.said(ARROW_MASS, 0, bow.virtualMassKg()),
        Rounded.to(2, correlation));
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

  /** Empty where there is no such curve. */
  Optional<VirtualMassView> virtualMass() {
    return fit.map(f -> virtualMass(f, model.orElseThrow()));
  }

  private static VirtualMassView virtualMass(VirtualMassFit fit, VirtualMass bow) {
    JointRegion region = JointRegion.of(fit, Trade.COVERAGE);
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
        LackOfFit.of(fit).map(FitRows::lackOfFit),
        region.corners().stream().map(FitRows::corner).toList(),
        region.isOpen());
  }

  private static LackOfFitView lackOfFit(LackOfFit lack) {
    return new LackOfFitView(
        Trade.finite(lack.f()), lack.lackDegrees(), lack.withinDegrees(), lack.pValue());
  }

  private static CornerView corner(JointRegion.Corner corner) {
    return new CornerView(
        Trade.in(JOULES_PER_FOOT_POUND, corner.energyJ()),
        Trade.in(KILOGRAMS_PER_GRAIN, corner.virtualMassKg()));
  }

  /** At each mass that was shot. */
  List<ShareView> shares() {
    return model
        .map(bow -> Arrays.stream(cells.massesKg()).mapToObj(massKg -> share(bow, massKg)).toList())
        .orElse(List.of());
  }

  private static ShareView share(VirtualMass bow, double massKg) {
    Quantity mass = Quantity.exact(massKg);
    Quantity speed = bow.speedMps(mass).only(Kind.OWN);
    Quantity share = bow.share(mass);
    return new ShareView(
        Trade.in(KILOGRAMS_PER_GRAIN, massKg),
        Trade.value(METRES_PER_FOOT, speed),
        Trade.ci95(METRES_PER_FOOT, speed),
        Trade.value(0.01, share),
        Trade.ci95(0.01, share));
  }
}
