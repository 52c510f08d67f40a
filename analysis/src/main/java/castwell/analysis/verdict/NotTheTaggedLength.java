package castwell.analysis.verdict;

import castwell.analysis.reading.Known;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Amount;
import java.util.Optional;

/** The length is an arrow's, but not that of the arrow that the tags name. */
final class NotTheTaggedLength implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    return evidence.knowledge().taggedLengthM().flatMap(tagged -> judge(evidence, tagged));
  }

  private static Optional<Reason> judge(Evidence evidence, Known tagged) {
    return evidence
        .measurement()
        .length()
        .filter(length -> NoArrowsLength.isAnArrows(length.value(), evidence.limits()))
        .filter(
            length ->
                Math.abs(length.value() - tagged.value()) > allowedM(length, tagged, evidence))
        .map(
            length ->
                Reason.of(
                    "not-the-tagged-length",
                    "verdict.not_the_tagged_length",
                    Amount.length(length.value()),
                    Amount.length(tagged.value())));
  }

  private static double allowedM(Quantity length, Known tagged, Evidence evidence) {
    double u = Math.hypot(length.standardUncertainty(), tagged.u());
    return evidence.limits().lengthToleranceM() + 2 * u;
  }
}
