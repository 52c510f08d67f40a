package castwell.analysis.reading;

import castwell.analysis.shot.Gate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the edges of one passage are most likely to be.
 *
 * @param best the story that explains them best
 * @param runnerUp the next best that doesn't tell the same arrows, where there is one
 * @param parts what each edge is in the best story, by its number, ascending
 * @param arrows those of the best story, in the order in which they came
 * @param flickerHz how often each gate went dark, where that was a lamp's doing
 * @param work how much it took
 */
public record Reading(
    StoryTold best,
    Optional<StoryTold> runnerUp,
    Map<Integer, Part> parts,
    List<ArrowRead> arrows,
    Map<Gate, Double> flickerHz,
    Work work) {

  /**
   * How much a reading took.
   *
   * @param tried how many pairs of candidates were tried
   * @param weighed how many stories were weighed in full
   */
  public record Work(int tried, int weighed) {}

  public Reading {
    parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
    arrows = List.copyOf(arrows);
    flickerHz = Map.copyOf(flickerHz);
  }

  /** The arrow, where it is the only one. */
  public Optional<ArrowRead> arrow() {
    return arrows.size() == 1 ? Optional.of(arrows.get(0)) : Optional.empty();
  }

  /** The next best story, where it fits nearly as well as the best. */
  public Optional<StoryTold> closeRunnerUp() {
    return runnerUp.filter(next -> next.costNats() - best.costNats() < Assumed.SURE_NATS);
  }
}
