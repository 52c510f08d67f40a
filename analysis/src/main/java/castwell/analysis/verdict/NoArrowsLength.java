package castwell.analysis.verdict;

import java.util.Optional;

/** Shorter or longer than any arrow. */
final class NoArrowsLength implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    Limits limits = evidence.limits();
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
    String found = lengthM > 0 ? "It is " + Words.length(lengthM) + " long" : "It has no length";
    return new Reason(
        "no-arrows-length",
        found
            + "; an arrow has between "
            + Words.length(limits.shortestM())
            + " and "
            + Words.length(limits.longestM())
            + ".");
  }
}
