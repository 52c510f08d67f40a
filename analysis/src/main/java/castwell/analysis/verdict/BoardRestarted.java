package castwell.analysis.verdict;

import java.util.Optional;

/** The board started anew before the passage was complete. */
final class BoardRestarted implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    return evidence.passage().boardRestarted()
        ? Optional.of(
            new Reason(
                "board-restarted", "The board restarted while this was going through the gates."))
        : Optional.empty();
  }
}
