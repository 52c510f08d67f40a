package castwell.capture.view.report.ranking;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.OptionalDouble;

/** Two bows against each other. */
public record PairView(
    String faster,
    String slower,
    OptionalDouble differenceFps,
    Interval95 ci95Fps,
    double p,
    @Meaning("adjusted for all pairs") double pHolm,
    boolean differ) {}
