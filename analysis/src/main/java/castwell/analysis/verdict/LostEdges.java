package castwell.analysis.verdict;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Edges that the board stamped never reached the host. An arrow with all its ends is spoilt by
 * those between its first edge and its last only.
 */
final class LostEdges implements Rule {
  private static final String CODE = "lost-edges";
  private static final int NAMED_AT_MOST = 6;

  @Override
  public Optional<Reason> judge(Evidence evidence) {
    List<Integer> lost =
        evidence.passage().lostEdges().stream()
            .filter(number -> evidence.arrow().map(arrow -> arrow.spans(number)).orElse(true))
            .toList();
    if (lost.isEmpty()) {
      return evidence.passage().edgesDropped() ? Optional.of(dropped()) : Optional.empty();
    }
    return Optional.of(told(lost));
  }

  private static Reason told(List<Integer> lost) {
    int first = lost.get(0);
    if (lost.size() == 1) {
      return Reason.of(CODE, "verdict.lost_edge", first);
    }
    return lost.size() > NAMED_AT_MOST
        ? Reason.of(CODE, "verdict.lost_many", lost.size(), first, lost.get(lost.size() - 1))
        : Reason.of(
            CODE,
            "verdict.lost_edges",
            lost.stream().map(String::valueOf).collect(Collectors.joining(", ")));
  }

  private static Reason dropped() {
    return Reason.of(CODE, "verdict.dropped_edges");
  }
}
