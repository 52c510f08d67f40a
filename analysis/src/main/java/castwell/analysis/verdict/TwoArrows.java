package castwell.analysis.verdict;

import java.util.Optional;

/** Two arrows went through so close together that their edges weren't parted. */
final class TwoArrows implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    return evidence.reading().arrows().size() > 1
        ? Optional.of(Reason.of("two-arrows", "verdict.two_arrows"))
        : Optional.empty();
  }
}
