package castwell.web.report.rework;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;

import castwell.analysis.compare.Change;
import castwell.analysis.compare.WhatMoved;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.view.report.rework.ChangeView;
import castwell.capture.view.report.rework.ChangedArrow;
import castwell.capture.view.report.rework.ConditionView;
import castwell.capture.view.report.rework.MovedView;
import castwell.capture.view.report.rework.ReworkView;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.SpeedNote;
import castwell.web.report.Trade;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** A rework's figures. */
final class ReworkRows {
  static final List<ReportColumn<ChangedArrow>> ARROWS =
      List.of(
          ReportColumn.text("bow", "bow", ChangedArrow::bow),
          ReportColumn.text("arrow", "arrow", ChangedArrow::arrow),
          new ReportColumn<>("mass_gr", "mass gr", 0, ChangedArrow::massGr),
          new ReportColumn<>("n_before", "n before", 0, ChangedArrow::nBefore),
          new ReportColumn<>("before_fps", "before ft/s", 1, ChangedArrow::beforeFps),
          new ReportColumn<>("n_after", "n after", 0, ChangedArrow::nAfter),
          new ReportColumn<>("after_fps", "after ft/s", 1, ChangedArrow::afterFps),
          new ReportColumn<>("change_fps", "change ft/s", 1, ChangedArrow::changeFps),
          new ReportColumn<>("ci95_fps", "95 % ft/s", 1, ChangedArrow::ci95Fps),
          new ReportColumn<>("p", "p", 3, ChangedArrow::p),
          ReportColumn.text("speed_at", "speed at", ChangedArrow::speedAt));

  static final List<ReportColumn<ConditionView>> CONDITIONS =
      List.of(
          ReportColumn.text("what", "what", ConditionView::what),
          ReportColumn.text("sentence", "what it could do", ConditionView::sentence));

  private ReworkRows() {}

  static ReworkView rework(Reworked reworked) {
    return new ReworkView(
        changed(reworked.effect()),
        Trade.value(METRES_PER_FOOT, reworked.change().meanMps()),
        reworked
            .control()
            .meanChange()
            .map(q -> Trade.value(METRES_PER_FOOT, q))
            .orElse(OptionalDouble.empty()),
        Trade.in(METRES_PER_FOOT, reworked.control().betweenBows()),
        reworked.conclusion().words(),
        reworked
            .moved()
            .map(m -> ReworkWords.moved(m.answer(), ReportFormat.TRADE))
            .orElse("can't tell"));
  }

  static ChangeView changed(Quantity change) {
    Quantity own = change.only(Kind.OWN);
    return new ChangeView(
        Trade.value(METRES_PER_FOOT, own),
        Trade.ci95(METRES_PER_FOOT, own),
        own.pValue(),
        Trade.finite(own.effectiveDegreesOfFreedom()),
        Trade.ci95(METRES_PER_FOOT, change));
  }

  static List<ChangedArrow> of(Change change) {
    return change.arrows().stream().map(arrow -> of(change.bow(), arrow)).toList();
  }

  private static ChangedArrow of(String bow, Change.OfArrow arrow) {
    Quantity own = arrow.changeMps().only(Kind.OWN);
    return new ChangedArrow(
        bow,
        arrow.arrow(),
        Trade.in(KILOGRAMS_PER_GRAIN, arrow.massKg()),
        arrow.nBefore(),
        Trade.value(METRES_PER_FOOT, arrow.beforeMps()),
        arrow.nAfter(),
        Trade.value(METRES_PER_FOOT, arrow.afterMps()),
        Trade.value(METRES_PER_FOOT, own),
        Trade.ci95(METRES_PER_FOOT, own),
        own.pValue(),
        SpeedNote.at(arrow.areAtBow()));
  }

  static MovedView moved(WhatMoved moved) {
    return new MovedView(
        moved.answer().name().toLowerCase(Locale.ROOT).replace('_', ' '),
        ReworkWords.moved(moved.answer(), ReportFormat.TRADE),
        moved.jointP(),
        Trade.value(JOULES_PER_FOOT_POUND, moved.energyJ()),
        Trade.ci95(JOULES_PER_FOOT_POUND, moved.energyJ()),
        moved.energyJ().pValue(),
        Trade.value(KILOGRAMS_PER_GRAIN, moved.virtualMassKg()),
        Trade.ci95(KILOGRAMS_PER_GRAIN, moved.virtualMassKg()),
        moved.virtualMassKg().pValue());
  }
}
