package castwell.analysis.verdict;

import castwell.analysis.speed.Measurement;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Amount;
import java.util.Optional;

/**
 * The speeds from front and tail are farther apart than their uncertainty allows. Errors that both
 * share, those of spacing and tick rate, can't make them differ, so only their own uncertainty
 * excuses a difference.
 */
final class FrontTailDisagree implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    Measurement measurement = evidence.measurement();
    double sigmas = evidence.limits().agreementSigmas();
    return forward(measurement.front())
        .flatMap(front -> forward(measurement.tail()).flatMap(tail -> judge(front, tail, sigmas)));
  }

  private static Optional<Quantity> forward(Optional<Quantity> speed) {
    return speed.filter(s -> s.value() > 0);
  }

  private static Optional<Reason> judge(Quantity front, Quantity tail, double sigmas) {
    Quantity difference = front.minus(tail);
    double allowedMps = sigmas * difference.standardUncertainty(Kind.OWN);
    return Math.abs(difference.value()) > allowedMps
        ? Optional.of(
            Reason.of(
                "front-tail-disagree",
                "verdict.front_tail",
                Amount.speed(front.value()),
                Amount.speed(tail.value())))
        : Optional.empty();
  }
}
