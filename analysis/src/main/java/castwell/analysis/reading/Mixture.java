package castwell.analysis.reading;

import castwell.analysis.speed.MixedSpeed;
import java.util.ArrayList;
import java.util.List;

/**
 * The speed of an arrow: the mixture of all ways to see it in all stories that tell it, by their
 * weights. Its variance is the law of total variance; beyond that it is made to reach every speed
 * that has some weight. Which datum is spoilt isn't known, so it is a mixture (Sivia, Data
 * Analysis, chapter 8, from memory); for two equal weights it is Birge's ratio (Phys. Rev. 40
 * (1932) 207, from memory).
 */
final class Mixture {

  /** What the same edges tell by the same pair, in however many stories. */
  private static final class Group {
    final Hypothesis arrow;
    final Hypothesis.Pair pair;
    final double mps;
    final double ownU;
    double weight;
    double weightedLength;

    Group(Hypothesis arrow, int way) {
      this.arrow = arrow;
      this.pair = arrow.pair[way];
      this.mps = arrow.speedMps[way];
      this.ownU = arrow.ownUMps[way];
    }

    boolean isFor(Hypothesis other, int way) {
      return pair == other.pair[way] && arrow.a.equals(other.a) && arrow.b.equals(other.b);
    }
  }

  private final List<Group> groups = new ArrayList<>();
  private double weights;

  private Mixture() {}

  static MixedSpeed of(Hypothesis arrow, List<Story> stories) {
    Mixture mixture = new Mixture();
    double best = stories.get(0).costNats();
    for (Story story : stories) {
      if (story.costNats() - best > Assumed.HEARD_NATS) {
        break;
      }
      Hypothesis told = story.like(arrow);
      if (told != null && (told.isWhole() || !arrow.isWhole())) {
        mixture.add(told, Math.exp(best - story.costNats()) / told.sum);
      }
    }
    return mixture.speed();
  }

  private void add(Hypothesis arrow, double factor) {
    for (int way = 0; way < arrow.ways; way++) {
      Group group = group(arrow, way);
      double weight = arrow.weight[way] * factor;
      group.weight += weight;
      group.weightedLength += weight * arrow.lengthM[way];
      weights += weight;
    }
  }

  private Group group(Hypothesis arrow, int way) {
    for (Group group : groups) {
      if (group.isFor(arrow, way)) {
        return group;
      }
    }
    Group group = new Group(arrow, way);
    groups.add(group);
    return group;
  }

  private MixedSpeed speed() {
    double v = 0;
    double length = 0;
    for (Group group : groups) {
      v += group.weight * group.mps / weights;
      length += group.weightedLength / weights;
    }
    return new MixedSpeed(
        v,
        ownU(v),
        length,
        lengthU(length),
        weight(Hypothesis.Pair.BOTH),
        weight(Hypothesis.Pair.FRONT),
        weight(Hypothesis.Pair.TAIL));
  }

  private double ownU(double v) {
    double variance = 0;
    for (Group group : groups) {
      double off = group.mps - v;
      variance += group.weight / weights * (group.ownU * group.ownU + off * off);
    }
    double u = Math.sqrt(variance);
    for (Group group : groups) {
      if (group.weight / weights > Assumed.REACHED_WEIGHT) {
        u = Math.max(u, Math.abs(group.mps - v) / Assumed.REACHED_U + group.ownU);
      }
    }
    return u;
  }

  private double lengthU(double length) {
    double variance = 0;
    for (Group group : groups) {
      double off = group.weightedLength / group.weight - length;
      variance += group.weight / weights * off * off;
    }
    double u = Math.sqrt(variance);
    for (Group group : groups) {
      if (group.weight / weights > Assumed.REACHED_WEIGHT) {
        double off = group.weightedLength / group.weight - length;
        u = Math.max(u, Math.abs(off) / Assumed.REACHED_U);
      }
    }
    return u;
  }

  private double weight(Hypothesis.Pair pair) {
    double sum = 0;
    for (Group group : groups) {
      sum += group.pair == pair ? group.weight / weights : 0;
    }
    return sum;
  }
}
