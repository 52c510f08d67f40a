package castwell.analysis.reading;

import static castwell.analysis.reading.Hypothesis.NONE;

import castwell.analysis.reading.Hypothesis.Candidate;
import java.util.Arrays;
import java.util.List;

/**
 * What one gate's edges are that are no arrow's front or tail, and how unlikely that is. Inside an
 * arrow each gap is the likeliest of flutter, bounce and light; outside each blocked run is a
 * bounce or something else. It is reckoned for thousands of stories, so it works in arrays that are
 * made once.
 */
final class Remainder {
  private static final int MOST_ANCHORS = 4;
  private final GateEdges gate;
  private final int side;
  private final Prior prior;
  private final int recent;

  private final double[] anchors = new double[MOST_ANCHORS];
  private int anchorCount;
  private double cost;
  private int strays;
  private double strayLogarithms;
  private Part[] parts;

  /**
   * @param side 0 for gate A, 1 for gate B
   * @param recent how many strays the gate saw in the second before
   */
  Remainder(GateEdges gate, int side, Prior prior, int recent) {
    this.gate = gate;
    this.side = side;
    this.prior = prior;
    this.recent = recent;
  }

  /** The parts of the gate's edges in a story of these arrows. */
  Part[] parts(List<Hypothesis> arrows) {
    Part[] told = new Part[gate.count()];
    weigh(arrows, told);
    return told;
  }

  /** The cost in nats; infinite when an arrow was clear where no arrow is. */
  double cost(List<Hypothesis> arrows) {
    return weigh(arrows, null);
  }

  private double weigh(List<Hypothesis> arrows, Part[] told) {
    parts = told;
    anchorCount = 0;
    cost = 0;
    strays = 0;
    strayLogarithms = 0;
    for (int i = 0; i < arrows.size(); i++) {
      anchor(arrows.get(i).at(side).front(), Part.FRONT);
      anchor(arrows.get(i).at(side).tail(), Part.TAIL);
    }
    int from = 0;
    for (int i = 0; i < arrows.size(); i++) {
      Candidate at = arrows.get(i).at(side);
      int first = at.front() == NONE ? at.tail() : at.front();
      int last = at.tail() == NONE ? at.front() : at.tail();
      outside(from, first);
      inside(first + 1, last, arrows.get(i));
      from = last + 1;
    }
    outside(from, gate.count());
    return cost + strayLogarithms - strays * Math.log(strayRate(strays + recent));
  }

  /**
   * How often strays come at a gate, in 1/s: more than a few are a swarm, of which each is
   * likelier.
   */
  static double strayRate(int strays) {
    int many = Math.max(1, strays - Assumed.FEW_STRAYS);
    return Assumed.CLUTTER * many * many;
  }

  private void anchor(int edge, Part part) {
    if (edge != NONE) {
      anchors[anchorCount++] = gate.seconds[edge];
      tell(edge, part);
    }
  }

  private void outside(int from, int to) {
    int open = NONE;
    for (int i = from; i < to; i++) {
      if (gate.merged[i]) {
        run(i, i);
      } else if (gate.blocked[i]) {
        unpaired(open);
        open = i;
      } else if (open == NONE) {
        unpaired(i);
      } else {
        run(open, i);
        open = NONE;
      }
    }
    unpaired(open);
  }

  private void inside(int from, int to, Hypothesis arrow) {
    int open = NONE;
    for (int i = from; i < to; i++) {
      if (gate.merged[i]) {
        gap(i, i, arrow, to);
      } else if (!gate.blocked[i]) {
        unpaired(open);
        open = i;
      } else if (open == NONE) {
        unpaired(i);
      } else {
        gap(open, i, arrow, to);
        open = NONE;
      }
    }
    unpaired(open);
  }

  private void unpaired(int edge) {
    if (edge != NONE) {
      strays++;
      strayLogarithms -= Math.log(Assumed.UNPAIRED);
      tell(edge, Part.UNKNOWN);
    }
  }

  private void run(int from, int to) {
    double seconds = Math.max(gate.seconds[to] - gate.seconds[from], Assumed.SHORTEST_S);
    double bounce = bounce(from, to);
    if (bounce > Assumed.CLUTTER / (seconds * Assumed.DURATIONS)) {
      cost -= Math.log(bounce);
      tell(from, to, Part.BOUNCE);
    } else {
      strays++;
      strayLogarithms += Math.log(seconds * Assumed.DURATIONS);
      tell(from, to, Part.OTHER);
    }
  }

  private void gap(int from, int to, Hypothesis arrow, int tail) {
    double v = arrow.meanSpeedMps;
    double likeliest = bounce(from, to);
    Part part = Part.BOUNCE;
    if (gate.seconds[from] >= gate.seconds[tail] - prior.flutterM() / v) {
      double flutter = Assumed.FLUTTER * (v / prior.flutterM()) * (v / prior.flutterM());
      part = flutter > likeliest ? Part.FLUTTER : part;
      likeliest = Math.max(flutter, likeliest);
    }
    if ((gate.seconds[to] - gate.seconds[from]) * v <= Assumed.LIGHT_M) {
      double light = Assumed.LIGHT * v / arrow.likeliestLengthM * v / Assumed.LIGHT_M;
      part = light > likeliest ? Part.LIGHT : part;
      likeliest = Math.max(light, likeliest);
    }
    // The logarithm of 0 makes the story impossible.
    cost -= Math.log(likeliest);
    tell(from, to, part);
  }

  /** How likely it is to be a bounce, which comes sooner after a true edge than before it. */
  private double bounce(int from, int to) {
    double best = 0;
    for (int i = 0; i < anchorCount; i++) {
      boolean after = gate.seconds[from] >= anchors[i];
      double far = after ? gate.seconds[to] - anchors[i] : anchors[i] - gate.seconds[from];
      boolean besides = after || gate.seconds[to] <= anchors[i];
      if (besides && far <= Assumed.MOST_BOUNCE_S) {
        double often = after ? Assumed.BOUNCE_AFTER : Assumed.BOUNCE_BEFORE;
        double density = Math.exp(-far / Assumed.BOUNCE_S) / (Assumed.BOUNCE_S * Assumed.BOUNCE_S);
        best = Math.max(best, often * density);
      }
    }
    return best;
  }

  private void tell(int from, int to, Part part) {
    tell(from, part);
    tell(to, part);
  }

  private void tell(int edge, Part part) {
    if (parts != null) {
      parts[edge] = part;
    }
  }

  /** The parts where the whole gate is a lamp's. */
  Part[] lamp() {
    Part[] told = new Part[gate.count()];
    Arrays.fill(told, Part.LAMP);
    return told;
  }
}
