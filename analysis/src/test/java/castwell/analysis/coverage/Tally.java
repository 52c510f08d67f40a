package castwell.analysis.coverage;

import castwell.analysis.uncertainty.Interval;
import java.util.LinkedHashMap;
import java.util.Map;

/** How many intervals of each kind held the truth. */
final class Tally {
  private final Map<String, int[]> counts = new LinkedHashMap<>();

  void add(String what, Interval interval, double truth) {
    int[] count = counts.computeIfAbsent(what, w -> new int[2]);
    count[0]++;
    count[1] += interval.contains(truth) ? 1 : 0;
  }

  Tally plus(Tally other) {
    Tally sum = new Tally();
    for (Tally part : new Tally[] {this, other}) {
      part.counts.forEach(
          (what, count) ->
              sum.counts.merge(what, count, (a, b) -> new int[] {a[0] + b[0], a[1] + b[1]}));
    }
    return sum;
  }

  Map<String, Double> shares() {
    Map<String, Double> shares = new LinkedHashMap<>();
    counts.forEach((what, count) -> shares.put(what, (double) count[1] / count[0]));
    return shares;
  }
}
