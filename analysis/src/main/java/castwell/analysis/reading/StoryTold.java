package castwell.analysis.reading;

import java.util.List;

/**
 * One story of what the edges are.
 *
 * @param costNats minus the logarithm of its density; only the difference of two stories of the
 *     same edges means anything
 * @param speedsMps the speeds of its arrows, in the order in which they came
 */
public record StoryTold(Kind kind, double costNats, List<Double> speedsMps) {
  public StoryTold {
    speedsMps = List.copyOf(speedsMps);
  }

  /** What is in a story, beside strays. */
  public enum Kind {
    ARROW,
    TWO_ARROWS,
    STRAYS_ALONE,
    /** A ball, a stick or a leaf. */
    OTHER_OBJECTS,
    LAMP,
    /** More edges than a story is sought for. */
    FLOOD
  }
}
