package castwell.capture.view.report.bow;

import castwell.capture.view.Meaning;
import castwell.capture.view.report.cell.CastView;
import castwell.capture.view.report.cell.CellView;
import castwell.capture.view.report.cell.StrayView;
import java.util.List;
import java.util.Optional;

/** One bow in one state: what it does to arrows, and why. */
public record BowReportView(
    String bow,
    String stateOn,
    Optional<String> done,
    double drawWeightLb,
    double drawLengthIn,
    List<String> otherStates,
    List<String> sentences,
    List<CellView> cells,
    @Meaning("null without two different masses") Optional<StraightLineView> straightLine,
    @Meaning("null where no shot counts") Optional<AnyDayView> anyDay,
    @Meaning(
            "by repeats alone, as if days didn't differ; null where there is no such curve, or one below zero")
        Optional<VirtualMassView> virtualMassRepeats,
    List<ShareView> energyShare,
    Optional<CastView> cast,
    @Meaning("null where none was measured") Optional<StoredEnergyView> forceDraw,
    List<String> advice,
    List<StrayView> strays) {}
