package castwell.analysis.reading;

import java.util.List;

/**
 * Which edges are arrows', all others being strays, and what that costs: minus the logarithm of its
 * density. Of costs only differences mean anything.
 */
record Story(List<Hypothesis> arrows, double costNats, StoryTold.Kind kind) {
  boolean isPossible() {
    return costNats < Double.POSITIVE_INFINITY;
  }

  /** This story's telling of that arrow; null when it has no such arrow. */
  Hypothesis like(Hypothesis arrow) {
    for (int i = 0; i < arrows.size(); i++) {
      if (arrow.isLike(arrows.get(i))) {
        return arrows.get(i);
      }
    }
    return null;
  }

  /** Whether it tells the same arrows, with other edges. */
  boolean isLike(Story other) {
    return arrows.size() == other.arrows.size()
        && !arrows.isEmpty()
        && arrows.stream().allMatch(arrow -> other.like(arrow) != null);
  }

  StoryTold told() {
    return new StoryTold(kind, costNats, arrows.stream().map(arrow -> arrow.meanSpeedMps).toList());
  }
}
