package castwell.capture.view.report.rework;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;

/** Which of a bow's two numbers moved. */
public record MovedView(
    String answer,
    String sentence,
    double energyChangeFtlbf,
    @Meaning("as wide as two questions at once want it: without 0 just where p is below 0.05")
        Interval95 energyChangeCi95Ftlbf,
    @Meaning("adjusted by Holm over the two") double energyP,
    double virtualMassChangeGr,
    @Meaning("likewise") Interval95 virtualMassChangeCi95Gr,
    @Meaning("likewise") double virtualMassP) {}
