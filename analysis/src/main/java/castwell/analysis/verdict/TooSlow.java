package castwell.analysis.verdict;

import java.util.Optional;

/** Slower than any arrow. */
final class TooSlow implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    double slowestMps = evidence.limits().slowestMps();
    return evidence
        .measurement()
        .speed()
        .filter(speed -> speed.value() < slowestMps)
        .map(
            speed ->
                new Reason(
                    "too-slow",
                    "At "
                        + Words.speed(speed.value())
                        + " it is too slow for an arrow; the slowest taken is "
                        + Words.speed(slowestMps)
                        + "."));
  }
}
