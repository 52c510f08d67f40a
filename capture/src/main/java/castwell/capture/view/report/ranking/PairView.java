package castwell.capture.view.report.ranking;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.OptionalDouble;

/** Two bows against each other, on any day. */
public record PairView(
    String faster,
    String slower,
    OptionalDouble differenceFps,
    @Meaning("the interval that belongs to p_holm: it leaves out 0 just where they differ")
        Interval95 ciHolmFps,
    @Meaning("how often such an interval holds the truth") double coverage,
    OptionalDouble differencePercent,
    @Meaning("adjusted for all pairs") double pHolm,
    boolean differ) {}
