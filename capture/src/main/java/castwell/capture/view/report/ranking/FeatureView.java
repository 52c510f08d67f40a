package castwell.capture.view.report.ranking;

import java.util.OptionalDouble;

/** A measure of the bows, and how it goes with cast over the rack. */
public record FeatureView(
    String feature, int n, OptionalDouble rankCorrelation, double p, boolean exact) {}
