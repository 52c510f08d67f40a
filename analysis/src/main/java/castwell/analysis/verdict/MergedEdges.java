package castwell.analysis.verdict;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import java.util.Optional;

/** Two edges fell together and got one stamp, so neither can be told. */
final class MergedEdges implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    return evidence.passage().edges().stream()
        .filter(edge -> edge.kind() == EdgeKind.MERGED)
        .findFirst()
        .map(MergedEdges::reason);
  }

  private static Reason reason(Edge edge) {
    return Reason.of("merged-edges", "verdict.merged", edge.gate());
  }
}
