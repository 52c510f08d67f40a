package castwell.analysis.verdict;

import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.uncertainty.Quantity;
import java.util.Optional;

/** Gate B, the farther one, saw an end of the object before gate A did, or at the same time. */
final class WrongOrder implements Rule {
  private static final String CODE = "wrong-order";

  @Override
  public Optional<Reason> judge(Evidence evidence) {
    if (!evidence.isOfNoArrow()) {
      return Optional.empty();
    }
    Passage passage = evidence.passage();
    boolean bothFronts = passage.front(Gate.A).isPresent() && passage.front(Gate.B).isPresent();
    boolean bothTails = passage.tail(Gate.A).isPresent() && passage.tail(Gate.B).isPresent();
    if (bothFronts && !isForward(evidence.measurement().front())) {
      return Optional.of(Reason.of(CODE, "verdict.wrong_order_front"));
    }
    if (bothTails && !isForward(evidence.measurement().tail())) {
      return Optional.of(Reason.of(CODE, "verdict.wrong_order_tail"));
    }
    return Optional.empty();
  }

  private static boolean isForward(Optional<Quantity> speed) {
    return speed.filter(s -> s.value() > 0).isPresent();
  }
}
