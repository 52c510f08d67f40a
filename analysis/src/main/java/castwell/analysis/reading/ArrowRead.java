package castwell.analysis.reading;

import castwell.analysis.shot.Edge;
import castwell.analysis.speed.Ends;
import castwell.analysis.speed.MixedSpeed;
import java.util.Comparator;
import java.util.List;

/**
 * An arrow as the best story tells it.
 *
 * @param ends the edges that are its own; one of them may be missing
 * @param speed with its own uncertainty, its length, and the weight of each pair in it
 * @param marginNats how much cheaper the best story is than the best one without this arrow
 * @param rival that story
 */
public record ArrowRead(Ends ends, MixedSpeed speed, double marginNats, StoryTold rival) {
  /** The margin from which on an arrow is sure. */
  public static final double SURE_NATS = Assumed.SURE_NATS;

  /** The relative uncertainty beyond which no speed is told. */
  public static final double MOST_RELATIVE_U = Assumed.MOST_RELATIVE_U;

  /** Whether it was seen with both ends at both gates. */
  public boolean isWhole() {
    return ends.all().size() == 4;
  }

  /** Whether no story without it fits nearly as well. */
  public boolean isSure() {
    return marginNats >= Assumed.SURE_NATS;
  }

  /** Whether front and tail say so different things that no speed is told. */
  public boolean isVague() {
    return speed.ownU() / speed.mps() > Assumed.MOST_RELATIVE_U;
  }

  /** Whether that weight, of a pair in the speed, is more than nothing. */
  public static boolean isHeard(double weight) {
    return weight > Assumed.REACHED_WEIGHT;
  }

  /** Whether that number is one between its first edge's and its last one's. */
  public boolean spans(int number) {
    List<Integer> own =
        ends.all().stream().map(Edge::number).sorted(Comparator.naturalOrder()).toList();
    return number > own.get(0) && number < own.get(own.size() - 1);
  }
}
