package castwell.analysis.speed;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import castwell.analysis.uncertainty.Quantity;
import java.util.List;

/**
 * A straight object at constant speed through perfect gates: t = x / v, and nothing else. The tests
 * add one disturbance each.
 */
public record Flight(double speedMps, double lengthM) {
  public static final double SPACING_M = 0.6096;
  public static final double HZ = 2e6;

  public static final Calibration CALIBRATION =
      new Calibration(SPACING_M, 0.29e-3, 1e-3, 2, Oscillator.CRYSTAL);
  public static final TickRate RATE = TickRate.nominal(HZ, Oscillator.CRYSTAL);

  public static final Flight ARROW = new Flight(45.72, 0.74);

  public Passage passage() {
    return passage(0);
  }

  /** The same, the counter standing there when the front reaches gate A. */
  public Passage passage(long firstTicks) {
    return Passages.stamped(
        List.of(
            edge(Gate.A, EdgeKind.BLOCKED, firstTicks, 0),
            edge(Gate.B, EdgeKind.BLOCKED, firstTicks, SPACING_M),
            edge(Gate.A, EdgeKind.CLEAR, firstTicks, lengthM),
            edge(Gate.B, EdgeKind.CLEAR, firstTicks, SPACING_M + lengthM)));
  }

  /** How many ticks the object takes for so many metres. */
  public long ticks(double metres) {
    return Math.round(metres / speedMps * HZ);
  }

  public Measurement measure(Passage passage) {
    return SpeedMeter.measure(passage, CALIBRATION, RATE, StampLatency.NONE);
  }

  /** The speed that other gates and another clock tell of the same flight. */
  public Quantity speedOver(Calibration gates, TickRate rate) {
    return SpeedMeter.measure(passage(), gates, rate, StampLatency.NONE).speed().orElseThrow();
  }

  /** Of the reported speed, as a share of the true one. */
  public double relativeError(Passage passage) {
    return measure(passage).speed().orElseThrow().value() / speedMps - 1;
  }

  private Edge edge(Gate gate, EdgeKind kind, long firstTicks, double metres) {
    return new Edge(1, gate, kind, firstTicks + ticks(metres), 0);
  }
}
