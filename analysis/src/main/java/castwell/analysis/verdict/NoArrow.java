package castwell.analysis.verdict;

/** What is left to say when no arrow is in a passage and no rule finds anything else amiss. */
final class NoArrow {
  private NoArrow() {}

  static Reason reason() {
    return Reason.of("no-arrow", "verdict.no_arrow");
  }
}
