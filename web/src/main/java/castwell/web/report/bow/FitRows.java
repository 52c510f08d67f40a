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
import castwell.capture.word.Rounded;
import castwell.web.report.Fields;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.Trade;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A bow's two curves of speed over mass, and what follows from the second. */
final class FitRows {
  static final List<ReportColumn> SHARES =
      List.of(
          new ReportColumn("mass_gr", "mass gr", 0),
          new ReportColumn("speed_fps", "speed ft/s", 1),
          new ReportColumn("speed_ci95_fps", "95 % ft/s", 1),
          new ReportColumn("share_percent", "share %", 1),
          new ReportColumn("share_ci95_percent", "95 %", 1));

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

  /** Null without two different masses. */
  Map<String, Object> straightLine() {
    return cells
        .line()
        .map(
            line ->
                new Fields()
                    .put("intercept_fps", Trade.in(METRES_PER_FOOT, line.intercept()))
                    .put("intercept_se", Trade.in(METRES_PER_FOOT, line.interceptSe()))
                    .put("slope_fps_per_gr", Trade.in(FPS_PER_GRAIN, line.slope()))
                    .put("slope_se", Trade.in(FPS_PER_GRAIN, line.slopeSe()))
                    .put("residual_sd_fps", Trade.in(METRES_PER_FOOT, line.residualSd()))
                    .put("degrees_of_freedom", line.degreesOfFreedom())
                    .map())
        .orElse(null);
  }

  /** Null where there is no such curve. */
  Map<String, Object> virtualMass() {
    return fit.map(f -> virtualMass(f, model.orElseThrow())).orElse(null);
  }

  private Map<String, Object> virtualMass(VirtualMassFit fit, VirtualMass bow) {
    return new Fields()
        .put("energy_ftlbf", Trade.in(JOULES_PER_FOOT_POUND, fit.energyJ()))
        .put("energy_se", Trade.in(JOULES_PER_FOOT_POUND, fit.energySe()))
        .put("energy_ci95_ftlbf", Trade.ci95(JOULES_PER_FOOT_POUND, bow.energyJ().only(Kind.OWN)))
        .put(
            "energy_common_u_ftlbf",
            Trade.u(JOULES_PER_FOOT_POUND, bow.energyJ().only(Kind.COMMON)))
        .put("virtual_mass_gr", Trade.in(KILOGRAMS_PER_GRAIN, fit.virtualMassKg()))
        .put("virtual_mass_se", Trade.in(KILOGRAMS_PER_GRAIN, fit.virtualMassSe()))
        .put("virtual_mass_ci95_gr", Trade.ci95(KILOGRAMS_PER_GRAIN, bow.virtualMassKg()))
        .put("correlation", Trade.finite(fit.correlation()))
        .put("residual_sd_fps", Trade.in(METRES_PER_FOOT, fit.residualSdMps()))
        .put("degrees_of_freedom", fit.degreesOfFreedom())
        .put("lack_of_fit", LackOfFit.of(fit).map(FitRows::lackOfFit).orElse(null))
        .putAll(region(fit))
        .map();
  }

  private static Map<String, Object> lackOfFit(LackOfFit lack) {
    return new Fields()
        .put("f", Trade.finite(lack.f()))
        .put("lack_degrees", lack.lackDegrees())
        .put("within_degrees", lack.withinDegrees())
        .put("p", lack.pValue())
        .map();
  }

  private static Map<String, Object> region(VirtualMassFit fit) {
    JointRegion region = JointRegion.of(fit, Trade.COVERAGE);
    return new Fields()
        .put("joint_region", region.corners().stream().map(FitRows::corner).toList())
        .put("joint_region_open", region.isOpen())
        .map();
  }

  private static Map<String, Object> corner(JointRegion.Corner corner) {
    return new Fields()
        .put("energy_ftlbf", Trade.in(JOULES_PER_FOOT_POUND, corner.energyJ()))
        .put("virtual_mass_gr", Trade.in(KILOGRAMS_PER_GRAIN, corner.virtualMassKg()))
        .map();
  }

  /** At each mass that was shot. */
  List<Map<String, Object>> shares() {
    return model
        .map(bow -> Arrays.stream(cells.massesKg()).mapToObj(massKg -> share(bow, massKg)).toList())
        .orElse(List.of());
  }

  private static Map<String, Object> share(VirtualMass bow, double massKg) {
    Quantity mass = Quantity.exact(massKg);
    Quantity speed = bow.speedMps(mass).only(Kind.OWN);
    Quantity share = bow.share(mass);
    return new Fields()
        .put("mass_gr", Trade.in(KILOGRAMS_PER_GRAIN, massKg))
        .put("speed_fps", Trade.value(METRES_PER_FOOT, speed))
        .put("speed_ci95_fps", Trade.ci95(METRES_PER_FOOT, speed))
        .put("share_percent", Trade.value(0.01, share))
        .put("share_ci95_percent", Trade.ci95(0.01, share))
        .map();
  }
}
