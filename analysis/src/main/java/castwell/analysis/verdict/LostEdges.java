package castwell.analysis.verdict;

import java.util.List;
import java.util.Optional;

/** Edges that the board stamped never reached the host. */
final class LostEdges implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    List<Integer> lost = evidence.passage().lostEdges();
    if (lost.isEmpty()) {
      return Optional.empty();
    }
    String verb = lost.size() == 1 ? " was" : " were";
    return Optional.of(
        new Reason(
            "lost-edges", "On the way from the board, " + Words.edges(lost) + verb + " lost."));
  }
}
