package castwell.analysis.reading;

/**
 * An arrow seen in four edges, or in three of them: the ways to see it so, each with its weight. A
 * weight is a density over the edges' times, in 1/s for each: with the Jacobian of time, speed,
 * length and residual, which is v^4/S.
 *
 * <p>Four times tell three unknowns, so one check is left: the residual, by how much the tail is
 * late against the front. If it doesn't fit, one edge is spoilt; then the other pair tells the
 * speed and the other gate the length.
 */
final class Hypothesis {
  /** Which edges tell the speed in one of the ways. */
  enum Pair {
    BOTH,
    FRONT,
    TAIL
  }

  /** What its front and tail are at one gate, as indexes of edges; at most one is {@link #NONE}. */
  record Candidate(int front, int tail) {}

  static final int NONE = -1;
  private static final int MOST_WAYS = 5;
  private static final double GOOD = 1 - 2 * Assumed.FRONT_SPOILT - 2 * Assumed.TAIL_SPOILT;

  final Candidate a;
  final Candidate b;
  private final Prior prior;
  private final GateEdges gateA;
  private final GateEdges gateB;

  final double[] weight = new double[MOST_WAYS];
  final double[] speedMps = new double[MOST_WAYS];
  final double[] ownUMps = new double[MOST_WAYS];
  final double[] lengthM = new double[MOST_WAYS];
  final Pair[] pair = new Pair[MOST_WAYS];
  int ways;

  /** The sum of the weights; 0 when no arrow within the limits is seen so. */
  double sum;

  double meanSpeedMps;
  double likeliestLengthM;
  double cost;

  Hypothesis(GateEdges gateA, Candidate a, GateEdges gateB, Candidate b, Prior prior) {
    this.gateA = gateA;
    this.gateB = gateB;
    this.a = a;
    this.b = b;
    this.prior = prior;
    boolean fronts = a.front() != NONE && b.front() != NONE;
    boolean tails = a.tail() != NONE && b.tail() != NONE;
    if (fronts && tails) {
      addWhole();
    } else {
      addHalf(fronts);
    }
    sumUp();
  }

  boolean isWhole() {
    return a.front() != NONE && a.tail() != NONE && b.front() != NONE && b.tail() != NONE;
  }

  Candidate at(int gate) {
    return gate == 0 ? a : b;
  }

  private double frontSeconds() {
    return gateB.seconds[b.front()] - gateA.seconds[a.front()];
  }

  private double tailSeconds() {
    return (gateB.seconds[b.tail()] - gateA.seconds[a.tail()]) * prior.tailFactor;
  }

  private static double blockedSeconds(GateEdges gate, Candidate at) {
    return gate.seconds[at.tail()] - gate.seconds[at.front()];
  }

  /** The variance of the place on the arrow between a pair of edges, in square metres. */
  private double variance(double mps, int edgeA, int edgeB) {
    return 2 * prior.triggerVariance + mps * mps * (gateA.variance[edgeA] + gateB.variance[edgeB]);
  }

  private void addWhole() {
    double spacing = prior.spacingM;
    double front = frontSeconds();
    double tail = tailSeconds();
    double aLong = blockedSeconds(gateA, a);
    double bLong = blockedSeconds(gateB, b);
    double roughly = spacing / (0.5 * (front + tail));
    double varianceF = variance(roughly, a.front(), b.front());
    double varianceT = variance(roughly, a.tail(), b.tail());

    double bothVariance = 1 / (1 / varianceF + 1 / varianceT);
    double v = spacing / ((front / varianceF + tail / varianceT) * bothVariance);
    double sigma = Math.sqrt(varianceF + varianceT);
    double z = v * (front - tail) / sigma;
    double fits = Math.exp(-z * z / 2) / (sigma * Math.sqrt(2 * Math.PI));
    add(GOOD * fits, v, bothVariance, 0.5 * (aLong + bLong), Pair.BOTH);

    double byTail = spacing / tail;
    double frontSpoilt = Assumed.FRONT_SPOILT * spoilt(byTail * (front - tail));
    add(frontSpoilt, byTail, varianceT, bLong, Pair.TAIL);
    add(frontSpoilt, byTail, varianceT, aLong, Pair.TAIL);
    double byFront = spacing / front;
    double tailSpoilt = Assumed.TAIL_SPOILT * spoilt(byFront * (front - tail));
    add(tailSpoilt, byFront, varianceF, bLong, Pair.FRONT);
    add(tailSpoilt, byFront, varianceF, aLong, Pair.FRONT);
  }

  private static double spoilt(double metres) {
    return Math.exp(-Math.abs(metres) / Assumed.SPOILT_M) / (2 * Assumed.SPOILT_M);
  }

  /** One edge is missing: its pair tells nothing, nor does its gate tell the length. */
  private void addHalf(boolean fronts) {
    double v = prior.spacingM / (fronts ? frontSeconds() : tailSeconds());
    double seconds =
        a.front() != NONE && a.tail() != NONE ? blockedSeconds(gateA, a) : blockedSeconds(gateB, b);
    double variance = fronts ? variance(v, a.front(), b.front()) : variance(v, a.tail(), b.tail());
    // There is no residual, so the Jacobian is a power lower.
    add(Assumed.MISSING / v, v, variance, seconds, fronts ? Pair.FRONT : Pair.TAIL);
  }

  private void add(double chance, double v, double variance, double blockedSeconds, Pair by) {
    double length = v * blockedSeconds;
    double jacobian = v * v * v * v / prior.spacingM;
    double w = chance * jacobian * Assumed.ARROWS * prior.speed(v) * prior.length(length);
    if (w > 0) {
      weight[ways] = w;
      speedMps[ways] = v;
      ownUMps[ways] = v / prior.spacingM * Math.sqrt(variance);
      lengthM[ways] = length;
      pair[ways] = by;
      ways++;
    }
  }

  private void sumUp() {
    int best = 0;
    for (int i = 0; i < ways; i++) {
      sum += weight[i];
      meanSpeedMps += weight[i] * speedMps[i];
      boolean longer = weight[i] == weight[best] && lengthM[i] > lengthM[best];
      best = weight[i] > weight[best] || longer ? i : best;
    }
    meanSpeedMps /= sum;
    likeliestLengthM = lengthM[best];
    cost = -Math.log(sum);
  }

  /**
   * Whether the other is the same arrow, told with other edges: all that both have are near in
   * flight, or one pair is and the speeds are alike.
   */
  boolean isLike(Hypothesis other) {
    double metres = Math.max(meanSpeedMps, other.meanSpeedMps);
    double frontA = apart(gateA, a.front(), other.a.front()) * metres;
    double frontB = apart(gateB, b.front(), other.b.front()) * metres;
    double tailA = apart(gateA, a.tail(), other.a.tail()) * metres;
    double tailB = apart(gateB, b.tail(), other.b.tail()) * metres;
    if (near(frontA) && near(frontB) && near(tailA) && near(tailB)) {
      return true;
    }
    // NaN, where one of them has no such edge, is no pair.
    boolean pair =
        frontA <= Assumed.ALIKE_M && frontB <= Assumed.ALIKE_M
            || tailA <= Assumed.ALIKE_M && tailB <= Assumed.ALIKE_M;
    return pair && Math.abs(meanSpeedMps / other.meanSpeedMps - 1) <= Assumed.ALIKE_SPEED;
  }

  private static double apart(GateEdges gate, int mine, int others) {
    return mine == NONE || others == NONE
        ? Double.NaN
        : Math.abs(gate.seconds[mine] - gate.seconds[others]);
  }

  private static boolean near(double metres) {
    return !(metres > Assumed.ALIKE_M);
  }
}
