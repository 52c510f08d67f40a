package castwell.analysis.verdict;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Amount;
import java.util.Optional;

/** The length is an arrow's, but not that of the arrow that the tags name. */
final class NotTheTaggedLength implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    if (evidence.taggedLengthM().isEmpty()) {
      return Optional.empty();
    }
    double taggedM = evidence.taggedLengthM().getAsDouble();
    return evidence
        .measurement()
        .length()
        .filter(length -> NoArrowsLength.isAnArrows(length.value(), evidence.limits()))
        .filter(length -> Math.abs(length.value() - taggedM) > allowedM(length, evidence.limits()))
        .map(
            length ->
                Reason.of(
                    "not-the-tagged-length",
                    "verdict.not_the_tagged_length",
                    Amount.length(length.value()),
                    Amount.length(taggedM)));
  }

  private static double allowedM(Quantity length, Limits limits) {
    return limits.lengthToleranceM() + 2 * length.standardUncertainty();
  }
}
