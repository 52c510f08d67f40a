package castwell.analysis.verdict;

import java.util.Optional;

/** Faster than any arrow. */
final class TooFast implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    double fastestMps = evidence.limits().fastestMps();
    return evidence
        .measurement()
        .speed()
        .filter(speed -> speed.value() > fastestMps)
        .map(
            speed ->
                new Reason(
                    "too-fast",
                    "At "
                        + Words.speed(speed.value())
                        + " it is too fast for an arrow; the fastest taken is "
                        + Words.speed(fastestMps)
                        + "."));
  }
}
