package castwell.analysis.verdict;

import castwell.analysis.reading.ArrowRead;
import castwell.analysis.reading.Knowledge;
import castwell.analysis.reading.Limits;
import castwell.analysis.reading.Reading;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Measurement;
import castwell.analysis.speed.TickRate;
import java.util.Optional;

/**
 * All that the rules look at.
 *
 * @param reading what the passage's edges are most likely to be
 * @param measurement what they give at this tick rate
 */
record Evidence(
    Passage passage,
    Reading reading,
    Measurement measurement,
    Knowledge knowledge,
    TickRate tickRate) {

  Limits limits() {
    return knowledge.limits();
  }

  /** The one arrow that was seen with both ends at both gates; then no other object is judged. */
  Optional<ArrowRead> arrow() {
    return reading.arrow().filter(ArrowRead::isWhole);
  }

  /** The one arrow of which an end at one gate has no time. */
  Optional<ArrowRead> partOfAnArrow() {
    return reading.arrow().filter(arrow -> !arrow.isWhole());
  }

  /** Whether nothing in the passage is an arrow, not even a part of one. */
  boolean isOfNoArrow() {
    return reading.arrows().isEmpty();
  }

  /**
   * Whether edges of this passage never reached the host, so that a missing edge proves nothing.
   */
  boolean isPartlyLost() {
    return passage.boardRestarted() || passage.edgesDropped() || !passage.lostEdges().isEmpty();
  }
}
