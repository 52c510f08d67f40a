package castwell.analysis.verdict;

import castwell.analysis.reading.Limits;
import castwell.analysis.wording.Amount;
import java.util.Optional;

/** The object is shorter or longer than any arrow. */
final class NoArrowsLength implements Rule {
  private static final String CODE = "no-arrows-length";

  @Override
  public Optional<Reason> judge(Evidence evidence) {
    Limits limits = evidence.limits();
    if (!evidence.isOfNoArrow()) {
      return Optional.empty();
    }
    return evidence
        .measurement()
        .length()
        .filter(length -> !isAnArrows(length.value(), limits))
        .map(length -> reason(length.value(), limits));
  }

  static boolean isAnArrows(double lengthM, Limits limits) {
    return lengthM >= limits.shortestM() && lengthM <= limits.longestM();
  }

  private static Reason reason(double lengthM, Limits limits) {
    // A tail before its front gives a length below zero, which tells a reader nothing.
    Amount shortest = Amount.length(limits.shortestM());
    Amount longest = Amount.length(limits.longestM());
    return lengthM > 0
        ? Reason.of(CODE, "verdict.no_arrows_length", shortest, longest, Amount.length(lengthM))
        : Reason.of(CODE, "verdict.no_length", shortest, longest);
  }
}
