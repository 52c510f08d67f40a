package castwell.analysis.verdict;

import java.util.List;
import java.util.Optional;

/** Edges that the board stamped never reached the host. */
final class LostEdges implements Rule {
  private static final String CODE = "lost-edges";

  @Override
  public Optional<Reason> judge(Evidence evidence) {
    List<Integer> lost = evidence.passage().lostEdges();
    if (lost.isEmpty()) {
      return evidence.passage().edgesDropped() ? Optional.of(dropped()) : Optional.empty();
    }
    String verb = lost.size() == 1 ? " was" : " were";
    return Optional.of(
        new Reason(CODE, "On the way from the board, " + Words.edges(lost) + verb + " lost."));
  }

  private static Reason dropped() {
    return new Reason(
        CODE, "More edges came at once than the board can tell, and it had to drop some.");
  }
}
