package castwell.web.report.bow;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.ENERGY;

import castwell.analysis.bow.JointRegion;
import castwell.analysis.season.StateEnergy;
import castwell.analysis.uncertainty.Estimate;
import castwell.capture.view.Interval95;
import castwell.capture.view.report.bow.AnyDayView;
import castwell.capture.view.report.bow.CornerView;
import castwell.capture.view.report.bow.ShareView;
import castwell.web.report.AnyDay;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.Trade;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a bow does on any day: its energy and virtual mass, and what each mass gets of it. */
public final class AnyDayRows {
  static final List<ReportColumn<ShareView>> SHARES =
      List.of(
          new ReportColumn<>("mass_gr", "mass gr", 0, ShareView::massGr),
          new ReportColumn<>("speed_fps", "any day ft/s", 1, ShareView::speedFps),
          new ReportColumn<>("ci95_any_day_fps", "95 % any day", 1, ShareView::ci95AnyDayFps),
          new ReportColumn<>("share_percent", "share %", 1, ShareView::sharePercent),
          new ReportColumn<>("share_ci95_percent", "95 %", 1, ShareView::shareCi95Percent));

  private AnyDayRows() {}

  /** E and K come as a pair, so they are told as one, or withheld as one. */
  public static String sentence(AnyDay bow, ReportFormat format) {
    StateEnergy energy = bow.energy();
    Optional<Estimate> mass = energy.virtualMassKg(Trade.COVERAGE);
    return mass.map(
            kg ->
                format.say(
                    pair(kg),
                    format.said(ENERGY, 1, energy.energyJ(Trade.COVERAGE).orElseThrow()),
                    format.said(ARROW_MASS, 0, AnyDay.notBelowZero(kg)),
                    format.plain(ARROW_MASS, 0, kg.interval().high())))
        .orElseGet(() -> format.say("report.bow.too_alike"));
  }

  private static String pair(Estimate kg) {
    if (kg.value() > 0) {
      return "report.bow.pair";
    }
    return kg.interval().high() > 0
        ? "report.bow.pair_below_zero"
        : "report.bow.pair_surely_below_zero";
  }

  static AnyDayView view(AnyDay bow) {
    StateEnergy energy = bow.energy();
    Optional<Estimate> joules = energy.energyJ(Trade.COVERAGE);
    Optional<Estimate> mass = energy.virtualMassKg(Trade.COVERAGE);
    Optional<JointRegion> region = energy.region(Trade.COVERAGE);
    return new AnyDayView(
        bow.sessions(),
        energy.isSplit(),
        joules.map(j -> Trade.value(JOULES_PER_FOOT_POUND, j)).orElse(OptionalDouble.empty()),
        joules.map(j -> Trade.ci95(JOULES_PER_FOOT_POUND, j)).orElse(Interval95.NOT_KNOWN),
        mass.filter(kg -> kg.value() > 0)
            .map(kg -> Trade.value(KILOGRAMS_PER_GRAIN, kg))
            .orElse(OptionalDouble.empty()),
        mass.filter(kg -> kg.interval().high() > 0)
            .map(kg -> Trade.ci95(KILOGRAMS_PER_GRAIN, AnyDay.notBelowZero(kg)))
            .orElse(Interval95.NOT_KNOWN),
        region.stream().flatMap(r -> r.corners().stream()).map(AnyDayRows::corner).toList(),
        region.map(JointRegion::isOpen).orElse(false));
  }

  private static CornerView corner(JointRegion.Corner corner) {
    return new CornerView(
        Trade.in(JOULES_PER_FOOT_POUND, corner.energyJ()),
        Trade.in(KILOGRAMS_PER_GRAIN, corner.virtualMassKg()));
  }

  /** At each mass that was shot. */
  static List<ShareView> shares(AnyDay bow, double... massesKg) {
    return Arrays.stream(massesKg).mapToObj(massKg -> share(bow, massKg)).toList();
  }

  private static ShareView share(AnyDay bow, double massKg) {
    Estimate speed = bow.curve().speedMps(massKg, Trade.COVERAGE);
    Optional<Estimate> share = bow.energy().share(massKg, Trade.COVERAGE);
    return new ShareView(
        Trade.in(KILOGRAMS_PER_GRAIN, massKg),
        Trade.value(METRES_PER_FOOT, speed),
        Trade.ci95(METRES_PER_FOOT, speed),
        share.map(s -> Trade.value(0.01, s)).orElse(OptionalDouble.empty()),
        share.map(s -> Trade.ci95(0.01, s)).orElse(Interval95.NOT_KNOWN));
  }
}
