package castwell.analysis.verdict;

import castwell.analysis.wording.Amount;
import java.util.Optional;

/** The object is faster than any arrow. */
final class TooFast implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    double fastestMps = evidence.limits().fastestMps();
    if (!evidence.isOfNoArrow()) {
      return Optional.empty();
    }
    return evidence
        .measurement()
        .speed()
        .filter(speed -> speed.value() > fastestMps)
        .map(
            speed ->
                Reason.of(
                    "too-fast",
                    "verdict.too_fast",
                    Amount.speed(speed.value()),
                    Amount.speed(fastestMps)));
  }
}
