package castwell.analysis.verdict;

import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Measurement;
import castwell.analysis.speed.TickRate;
import java.util.OptionalDouble;

/**
 * All that the rules look at.
 *
 * @param measurement what this passage gives at this tick rate
 * @param taggedLengthM the length of the arrow that the tags name; empty when it isn't known
 */
public record Evidence(
    Passage passage,
    Measurement measurement,
    TickRate tickRate,
    Limits limits,
    OptionalDouble taggedLengthM) {

  /**
   * Whether edges of this passage never reached the host, so that a missing edge proves nothing.
   */
  boolean isPartlyLost() {
    return passage.boardRestarted() || passage.edgesDropped() || !passage.lostEdges().isEmpty();
  }
}
