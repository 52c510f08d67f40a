package castwell.analysis.reading;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A lamp that flickers in front of a gate: blocked runs in step, 4 to 25 ms apart and all alike.
 *
 * @param costNats how unlikely it is that the gate's edges are a lamp's; infinite when they aren't
 * @param periodS the median time from one run to the next
 */
record Lamp(double costNats, double periodS) {
  private static final Lamp NONE = new Lamp(Double.POSITIVE_INFINITY, Double.NaN);
  private static final int FEWEST_RUNS = 3;
  private static final double IN_STEP = 0.2;
  private static final double SHARE_IN_STEP = 0.7;

  /** Periods come from a span of 20 ms, and runs from one of 10 ms, each as likely as any other. */
  private static final double FIRST_RUN = -Math.log(50) - Math.log(100);

  private static final double NEXT_RUN = Math.log(1000);
  private static final double WORST = 8;

  static Lamp of(GateEdges gate) {
    int runs = gate.runs();
    if (runs < FEWEST_RUNS || 2 * runs < gate.count() - 2) {
      return NONE;
    }
    double[] begins = new double[runs];
    double[] lasts = new double[runs];
    int found = 0;
    for (int i = 0; i < gate.count(); i++) {
      if (gate.isRun(i)) {
        begins[found] = gate.seconds[i];
        lasts[found++] = gate.runSeconds(i);
      }
    }
    return of(begins, lasts);
  }

  private static Lamp of(double[] begins, double[] lasts) {
    double[] steps = new double[begins.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = begins[i + 1] - begins[i];
    }
    double period = middle(steps);
    double lasting = middle(lasts);
    double inStep =
        Arrays.stream(steps).filter(s -> Math.abs(s - period) <= IN_STEP * period).count();
    if (!(period >= Assumed.SHORTEST_PERIOD_S && period <= Assumed.LONGEST_PERIOD_S)
        || inStep < SHARE_IN_STEP * steps.length) {
      return NONE;
    }
    double cost = -Math.log(Assumed.LAMP) + FIRST_RUN;
    for (int i = 0; i < steps.length; i++) {
      cost -= fit(steps[i] - period) + fit(lasts[i + 1] - lasting);
    }
    return new Lamp(cost, period);
  }

  private static double middle(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private static double fit(double seconds) {
    return NEXT_RUN - Math.min(Math.abs(seconds) / Assumed.LAMP_S, WORST);
  }

  boolean isSeen() {
    return Double.isFinite(costNats);
  }

  OptionalDouble hz() {
    return isSeen() ? OptionalDouble.of(1 / periodS) : OptionalDouble.empty();
  }
}
