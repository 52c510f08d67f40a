package castwell.analysis.verdict;

import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Measurement;
import castwell.analysis.speed.TickRate;
import java.util.OptionalDouble;

/**
 * All that the rules look at.
 *
 * @param measurement made from this passage at this tick rate
 * @param taggedLengthM length of the arrow that the tags name; empty when not known
 */
public record Evidence(
    Passage passage,
    Measurement measurement,
    TickRate tickRate,
    Limits limits,
    OptionalDouble taggedLengthM) {

  /** Whether something of this passage never reached the host, so that a gap proves nothing. */
  boolean isPartlyLost() {
    return passage.boardRestarted() || passage.edgesDropped() || !passage.lostEdges().isEmpty();
  }
}
