package castwell.capture.view.report.rework;

import castwell.capture.view.Interval95;
import java.util.OptionalDouble;

/** Which of a bow's two numbers moved. */
public record MovedView(
    String answer,
    String sentence,
    double jointP,
    OptionalDouble energyChangeFtlbf,
    Interval95 energyChangeCi95Ftlbf,
    double energyP,
    OptionalDouble virtualMassChangeGr,
    Interval95 virtualMassChangeCi95Gr,
    double virtualMassP) {}
