package castwell.web.report.rework;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;

import castwell.analysis.compare.Change;
import castwell.analysis.compare.WhatMoved;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.web.report.Fields;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.Trade;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A rework's figures. */
final class ReworkRows {
  static final List<ReportColumn> ARROWS =
      List.of(
          ReportColumn.text("bow", "bow"),
          ReportColumn.text("arrow", "arrow"),
          new ReportColumn("mass_gr", "mass gr", 0),
          new ReportColumn("n_before", "n before", 0),
          new ReportColumn("before_fps", "before ft/s", 1),
          new ReportColumn("n_after", "n after", 0),
          new ReportColumn("after_fps", "after ft/s", 1),
          new ReportColumn("change_fps", "change ft/s", 1),
          new ReportColumn("ci95_fps", "95 % ft/s", 1),
          new ReportColumn("p", "p", 3));

  static final List<ReportColumn> CONDITIONS =
      List.of(ReportColumn.text("what", "what"), ReportColumn.text("sentence", "what it could do"));

  private ReworkRows() {}

  static Map<String, Object> rework(Reworked reworked) {
    return changed(reworked.effect())
        .put("bow_change_fps", Trade.value(METRES_PER_FOOT, reworked.change().meanMps()))
        .put(
            "control_change_fps",
            reworked.control().meanChange().map(q -> Trade.value(METRES_PER_FOOT, q)).orElse(null))
        .put(
            "controls_disagree_by_fps", Trade.in(METRES_PER_FOOT, reworked.control().betweenBows()))
        .put("conclusion", reworked.conclusion().words())
        .put(
            "what_moved",
            reworked
                .moved()
                .map(m -> ReworkWords.moved(m.answer(), ReportFormat.TRADE))
                .orElse("can't tell"))
        .map();
  }

  /** The interval and p are of repeats alone; what set-ups have in common stands beside them. */
  static Fields changed(Quantity change) {
    Quantity own = change.only(Kind.OWN);
    return new Fields()
        .put("change_fps", Trade.value(METRES_PER_FOOT, own))
        .put("ci95_fps", Trade.ci95(METRES_PER_FOOT, own))
        .put("p", own.pValue())
        .put("degrees_of_freedom", Trade.finite(own.effectiveDegreesOfFreedom()))
        .put("ci95_with_common_fps", Trade.ci95(METRES_PER_FOOT, change));
  }

  static List<Map<String, Object>> of(Change change) {
    return change.arrows().stream()
        .map(
            arrow -> {
              Quantity own = arrow.changeMps().only(Kind.OWN);
              return new Fields()
                  .put("bow", change.bow())
                  .put("arrow", arrow.arrow())
                  .put("mass_gr", Trade.in(KILOGRAMS_PER_GRAIN, arrow.massKg()))
                  .put("n_before", arrow.nBefore())
                  .put("before_fps", Trade.value(METRES_PER_FOOT, arrow.beforeMps()))
                  .put("n_after", arrow.nAfter())
                  .put("after_fps", Trade.value(METRES_PER_FOOT, arrow.afterMps()))
                  .put("change_fps", Trade.value(METRES_PER_FOOT, own))
                  .put("ci95_fps", Trade.ci95(METRES_PER_FOOT, own))
                  .put("p", own.pValue())
                  .map();
            })
        .toList();
  }

  static Map<String, Object> moved(WhatMoved moved) {
    return new Fields()
        .put("answer", moved.answer().name().toLowerCase(Locale.ROOT).replace('_', ' '))
        .put("sentence", ReworkWords.moved(moved.answer(), ReportFormat.TRADE))
        .put("joint_p", moved.jointP())
        .put("energy_change_ftlbf", Trade.value(JOULES_PER_FOOT_POUND, moved.energyJ()))
        .put("energy_change_ci95_ftlbf", Trade.ci95(JOULES_PER_FOOT_POUND, moved.energyJ()))
        .put("energy_p", moved.energyJ().pValue())
        .put("virtual_mass_change_gr", Trade.value(KILOGRAMS_PER_GRAIN, moved.virtualMassKg()))
        .put("virtual_mass_change_ci95_gr", Trade.ci95(KILOGRAMS_PER_GRAIN, moved.virtualMassKg()))
        .put("virtual_mass_p", moved.virtualMassKg().pValue())
        .map();
  }
}
