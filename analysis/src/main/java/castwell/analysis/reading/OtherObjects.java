package castwell.analysis.reading;

/**
 * Balls, sticks, leaves: runs of both gates that go together, of no arrow's speed or length,
 * forwards or, slower, backwards.
 */
final class OtherObjects {
  private static final double SLOWEST_MPS = 0.5;
  private static final double FASTEST_MPS = 200;
  private static final double FASTEST_BACKWARDS_MPS = 15;
  private static final double SHORTEST_M = 0.005;
  private static final double LONGEST_M = 3;
  private static final double SPEEDS = Math.log(FASTEST_MPS / SLOWEST_MPS);
  private static final double LENGTHS = Math.log(LONGEST_M / SHORTEST_M);

  private final GateEdges a;
  private final GateEdges b;
  private final Prior prior;
  private final double strayRates;

  private OtherObjects(GateEdges a, GateEdges b, Prior prior, Knowledge knowledge) {
    this.a = a;
    this.b = b;
    this.prior = prior;
    this.strayRates =
        Remainder.strayRate(a.runs() + knowledge.recentA())
            * Remainder.strayRate(b.runs() + knowledge.recentB());
  }

  /** By how many nats such objects explain the edges better than strays at either gate do. */
  static double gain(GateEdges a, GateEdges b, Prior prior, Knowledge knowledge) {
    return new OtherObjects(a, b, prior, knowledge).gain();
  }

  private double gain() {
    boolean[] taken = new boolean[b.count()];
    double gain = 0;
    for (int i = 0; i < a.count(); i++) {
      if (a.isRun(i)) {
        double best = 0;
        int partner = -1;
        for (int j = 0; j < b.count(); j++) {
          double here = b.isRun(j) && !taken[j] ? gain(i, j) : 0;
          if (here > best) {
            best = here;
            partner = j;
          }
        }
        if (partner >= 0) {
          gain += best;
          taken[partner] = true;
        }
      }
    }
    return gain;
  }

  private double gain(int i, int j) {
    double front = b.seconds[j] - a.seconds[i];
    double tail = b.seconds[j + 1] - a.seconds[i + 1];
    if (front * tail <= 0) {
      return 0;
    }
    double v = 2 * prior.spacingM / (Math.abs(front) + Math.abs(tail));
    double aLong = Math.max(a.runSeconds(i), Assumed.SHORTEST_S);
    double bLong = Math.max(b.runSeconds(j), Assumed.SHORTEST_S);
    double length = v * 0.5 * (aLong + bLong);
    boolean forwards = front > 0;
    boolean outside =
        v < SLOWEST_MPS
            || v > (forwards ? FASTEST_MPS : FASTEST_BACKWARDS_MPS)
            || length < SHORTEST_M
            || length > LONGEST_M;
    if (outside || forwards && prior.allows(v, length)) {
      return 0;
    }
    double density =
        Assumed.OBJECTS / (v * SPEEDS) / (length * LENGTHS) * agreement(v, front - tail);
    double strays = strayRates / (aLong * bLong * Assumed.DURATIONS * Assumed.DURATIONS);
    return density > 0 ? Math.log(density * v * v * v * v / prior.spacingM / strays) : 0;
  }

  private double agreement(double v, double seconds) {
    double variance = 4 * prior.triggerVariance;
    double metres = v * seconds;
    return Math.exp(-metres * metres / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
  }
}
