package castwell.analysis.verdict;

import castwell.analysis.wording.Amount;
import java.util.Optional;

/** The object is slower than any arrow. */
final class TooSlow implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    double slowestMps = evidence.limits().slowestMps();
    if (!evidence.isOfNoArrow()) {
      return Optional.empty();
    }
    return evidence
        .measurement()
        .speed()
        .filter(speed -> speed.value() < slowestMps)
        .map(
            speed ->
                Reason.of(
                    "too-slow",
                    "verdict.too_slow",
                    Amount.speed(speed.value()),
                    Amount.speed(slowestMps)));
  }
}
