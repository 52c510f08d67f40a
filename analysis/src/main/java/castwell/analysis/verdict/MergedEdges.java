package castwell.analysis.verdict;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.util.Optional;

/** Two edges fell together and got one stamp, so that a front or a tail has no time. */
final class MergedEdges implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    return hidesAnEnd(evidence)
        .map(edge -> Reason.of("merged-edges", "verdict.merged", edge.gate()));
  }

  /** The merged stamp that may be the end that isn't seen; an arrow with all its ends has none. */
  static Optional<Edge> hidesAnEnd(Evidence evidence) {
    return evidence.arrow().isPresent()
        ? Optional.empty()
        : evidence.passage().edges().stream()
            .filter(edge -> edge.kind() == EdgeKind.MERGED)
            .filter(edge -> mayLackAnEnd(evidence, edge.gate()))
            .findFirst();
  }

  private static boolean mayLackAnEnd(Evidence evidence, Gate gate) {
    return evidence
        .partOfAnArrow()
        .map(arrow -> arrow.ends().front(gate).isEmpty() || arrow.ends().tail(gate).isEmpty())
        .orElse(true);
  }
}
