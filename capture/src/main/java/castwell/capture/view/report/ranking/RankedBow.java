package castwell.capture.view.report.ranking;

import castwell.capture.view.Meaning;
import castwell.capture.view.report.cell.CastView;
import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** A bow's place by cast. */
public record RankedBow(
    String bow,
    String stateOn,
    double drawWeightLb,
    int n,
    @JsonUnwrapped CastView cast,
    @Meaning("letters: bows that share one can't be told apart") String groups) {}
