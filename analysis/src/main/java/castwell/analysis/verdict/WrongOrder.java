package castwell.analysis.verdict;

import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.uncertainty.Quantity;
import java.util.Optional;

/** Gate B, the farther one, saw an end of it before gate A, or at once with it. */
final class WrongOrder implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    Passage passage = evidence.passage();
    boolean bothFronts = passage.front(Gate.A).isPresent() && passage.front(Gate.B).isPresent();
    boolean bothTails = passage.tail(Gate.A).isPresent() && passage.tail(Gate.B).isPresent();
    if (bothFronts && !isForward(evidence.measurement().front())) {
      return Optional.of(reason("front"));
    }
    if (bothTails && !isForward(evidence.measurement().tail())) {
      return Optional.of(reason("tail"));
    }
    return Optional.empty();
  }

  private static boolean isForward(Optional<Quantity> speed) {
    return speed.filter(s -> s.value() > 0).isPresent();
  }

  private static Reason reason(String end) {
    return new Reason(
        "wrong-order", "Gate B saw its " + end + " no later than gate A, which is nearer the bow.");
  }
}
