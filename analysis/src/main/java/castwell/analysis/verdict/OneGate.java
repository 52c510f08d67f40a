package castwell.analysis.verdict;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Gate;
import java.util.List;
import java.util.Optional;

/** Only one gate saw anything. */
final class OneGate implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    List<Gate> saw = evidence.passage().edges().stream().map(Edge::gate).distinct().toList();
    if (saw.size() != 1 || evidence.isPartlyLost()) {
      return Optional.empty();
    }
    Gate blind = saw.get(0) == Gate.A ? Gate.B : Gate.A;
    return Optional.of(Reason.of("one-gate", "verdict.one_gate", blind));
  }
}
