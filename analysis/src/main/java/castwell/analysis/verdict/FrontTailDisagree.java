package castwell.analysis.verdict;

import castwell.analysis.reading.ArrowRead;
import castwell.analysis.speed.Measurement;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Amount;
import java.util.Optional;

/**
 * The speeds from front and tail contradict. Of an arrow's, its uncertainty tells so, and only when
 * that is so large that neither can be trusted it doesn't count. Of another object they are farther
 * apart than their own uncertainty allows: errors that both share, those of spacing and tick rate,
 * can't make them differ.
 */
final class FrontTailDisagree implements Rule {
  private static final String CODE = "front-tail-disagree";

  @Override
  public Optional<Reason> judge(Evidence evidence) {
    Measurement measurement = evidence.measurement();
    return forward(measurement.front())
        .flatMap(
            front -> forward(measurement.tail()).flatMap(tail -> judge(front, tail, evidence)));
  }

  private static Optional<Quantity> forward(Optional<Quantity> speed) {
    return speed.filter(s -> s.value() > 0);
  }

  private static Optional<Reason> judge(Quantity front, Quantity tail, Evidence evidence) {
    if (evidence.arrow().isPresent()) {
      return evidence
          .arrow()
          .filter(ArrowRead::isVague)
          .map(arrow -> reason("verdict.front_or_tail", front, tail));
    }
    Quantity difference = front.minus(tail);
    double allowedMps =
        evidence.limits().agreementSigmas() * difference.standardUncertainty(Kind.OWN);
    return evidence.isOfNoArrow() && Math.abs(difference.value()) > allowedMps
        ? Optional.of(reason("verdict.front_tail", front, tail))
        : Optional.empty();
  }

  private static Reason reason(String key, Quantity front, Quantity tail) {
    return Reason.of(CODE, key, Amount.speed(front.value()), Amount.speed(tail.value()));
  }
}
