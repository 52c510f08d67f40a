package castwell.analysis.verdict;

import castwell.analysis.reading.ArrowRead;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Amount;
import java.util.Optional;

/**
 * Only the fronts, or only the tails, of what may be an arrow were seen at both gates, since
 * something else hid the rest. Where a gate saw no such edge at all, {@link MissingEdge} says so.
 */
final class OnePair implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    return evidence
        .partOfAnArrow()
        .filter(arrow -> !evidence.isPartlyLost())
        .filter(arrow -> MergedEdges.hidesAnEnd(evidence).isEmpty())
        .filter(arrow -> MissingEdge.missing(evidence.passage()).isEmpty())
        .flatMap(arrow -> evidence.measurement().speed().map(speed -> reason(arrow, speed)));
  }

  private static Reason reason(ArrowRead arrow, Quantity speed) {
    boolean fronts = arrow.ends().frontA().isPresent() && arrow.ends().frontB().isPresent();
    return Reason.of(
        "one-pair",
        fronts ? "verdict.one_pair_fronts" : "verdict.one_pair_tails",
        Amount.speed(speed.value()));
  }
}
