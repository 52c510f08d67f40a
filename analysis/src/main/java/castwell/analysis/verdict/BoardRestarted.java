package castwell.analysis.verdict;

import java.util.Optional;

/** The board started anew before the passage was complete. */
final class BoardRestarted implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    return evidence.passage().boardRestarted()
        ? Optional.of(Reason.of("board-restarted", "verdict.board_restarted"))
        : Optional.empty();
  }
}
