package castwell.web.report.rework;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;

import castwell.analysis.compare.ArrowChange;
import castwell.analysis.compare.Rework.Moved;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.view.report.rework.ChangedArrow;
import castwell.capture.view.report.rework.ConditionView;
import castwell.capture.view.report.rework.MovedView;
import castwell.capture.view.report.rework.ReworkView;
import castwell.capture.view.report.rework.SameGppView;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import castwell.web.report.SpeedNote;
import castwell.web.report.Trade;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A rework's figures. */
final class ReworkRows {
  private static final double PERCENT = 0.01;

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
          new ReportColumn<>(
              "ci95_repeats_alone_fps",
              "95 % of repeats alone",
              1,
              ChangedArrow::ci95RepeatsAloneFps),
          new ReportColumn<>(
              "p_repeats_alone", "p of repeats alone", 3, ChangedArrow::pRepeatsAlone),
          ReportColumn.text("speed_at", "speed at", ChangedArrow::speedAt));

  static final List<ReportColumn<ConditionView>> CONDITIONS =
      List.of(
          ReportColumn.text("what", "what", ConditionView::what),
          ReportColumn.text("sentence", "what it could do", ConditionView::sentence));

  private ReworkRows() {}

  static ReworkView rework(Reworked reworked) {
    return new ReworkView(
        reworked.share().value() / PERCENT,
        Trade.interval(PERCENT, reworked.share().interval()),
        reworked.changeMps().value() / METRES_PER_FOOT,
        Trade.interval(METRES_PER_FOOT, reworked.changeMps().interval()),
        reworked.pValue(),
        reworked.rework().noChangeLargerThan(reworked.massKg()) / PERCENT,
        ReworkWords.conclusion(reworked),
        reworked.massKg() / KILOGRAMS_PER_GRAIN,
        reworked.controlNames(),
        List.copyOf(reworked.sides().before().sessions()),
        List.copyOf(reworked.sides().after().sessions()));
  }

  static SameGppView sameGpp(Reworked reworked, ReportRequest request) {
    var change = reworked.castChange(request);
    var share = change.estimate(Trade.COVERAGE).rising(Math::expm1);
    var mps = reworked.castChangeMps(request);
    return new SameGppView(
        share.value() / PERCENT,
        Trade.interval(PERCENT, share.interval()),
        mps.value() / METRES_PER_FOOT,
        Trade.interval(METRES_PER_FOOT, mps.interval()),
        change.pValue(),
        request.gpp());
  }

  static List<ChangedArrow> arrows(Reworked reworked) {
    return reworked.arrows().stream()
        .map(arrow -> row(arrow, reworked.season().isAtBow(arrow.bow())))
        .toList();
  }

  private static ChangedArrow row(ArrowChange arrow, boolean isAtBow) {
    Quantity change = arrow.changeMps();
    return new ChangedArrow(
        arrow.bow(),
        arrow.arrow(),
        Trade.in(KILOGRAMS_PER_GRAIN, arrow.massKg()),
        arrow.nBefore(),
        Trade.value(METRES_PER_FOOT, arrow.beforeMps()),
        arrow.nAfter(),
        Trade.value(METRES_PER_FOOT, arrow.afterMps()),
        Trade.value(METRES_PER_FOOT, change),
        Trade.ci95(METRES_PER_FOOT, change),
        change.pValue(),
        SpeedNote.at(isAtBow));
  }

  static MovedView moved(Moved moved) {
    return new MovedView(
        moved.answer().name().toLowerCase(Locale.ROOT).replace('_', ' '),
        ReworkWords.moved(Optional.of(moved.answer()), ReportFormat.TRADE),
        moved.energyJ().value() / JOULES_PER_FOOT_POUND,
        Trade.interval(JOULES_PER_FOOT_POUND, moved.energyJ().interval()),
        moved.energyP(),
        moved.virtualMassKg().value() / KILOGRAMS_PER_GRAIN,
        Trade.interval(KILOGRAMS_PER_GRAIN, moved.virtualMassKg().interval()),
        moved.virtualMassP());
  }
}
