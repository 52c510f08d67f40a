package castwell.analysis.speed;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * All that makes a speed uncertain at some gates, for an ordinary arrow whose front and tail both
 * gates saw. It is read off a speed that {@link SpeedMeter} gives, so that it holds what each
 * speed's uncertainty holds and nothing else.
 *
 * @param speedMps the speed for which it holds
 * @param shares one for each source, the largest first
 */
public record Budget(double speedMps, List<Share> shares) {
  /** A speed near most bows', 164 ft/s. */
  public static final double TYPICAL_MPS = 50;

  private static final double TYPICAL_LENGTH_M = 0.74;

  /**
   * What one source makes of the speed.
   *
   * @param source its name, one for all ends and gates
   * @param relativeU its standard uncertainty as a share of the speed
   */
  public record Share(String source, Kind kind, double relativeU) {}

  public Budget {
    shares = List.copyOf(shares);
  }

  public static Budget of(Calibration calibration, TickRate rate) {
    Quantity speed =
        SpeedMeter.measure(arrow(calibration, rate), calibration, rate, StampLatency.NONE)
            .speed()
            .orElseThrow();
    Map<Named, Double> squares = new LinkedHashMap<>();
    speed
        .contributions()
        .forEach((source, part) -> squares.merge(Named.of(source), part * part, Double::sum));
    List<Share> shares = new ArrayList<>();
    squares.forEach(
        (named, square) ->
            shares.add(new Share(named.name(), named.kind(), Math.sqrt(square) / speed.value())));
    shares.removeIf(share -> share.relativeU() == 0);
    shares.sort(Comparator.comparingDouble(Share::relativeU).reversed());
    return new Budget(speed.value(), shares);
  }

  /** The root sum of the squares of one kind's shares. */
  public double relativeU(Kind kind) {
    return root(shares.stream().filter(share -> share.kind() == kind).toList());
  }

  public double relativeU() {
    return root(shares);
  }

  private static double root(List<Share> shares) {
    return Math.sqrt(shares.stream().mapToDouble(s -> s.relativeU() * s.relativeU()).sum());
  }

  /** A source without its end and gate. */
  private record Named(String name, Kind kind) {
    static Named of(Source source) {
      return new Named(source.name().replaceFirst(" at gate .*", ""), source.kind());
    }
  }

  private static Passage arrow(Calibration calibration, TickRate rate) {
    long across = Math.max(1, Math.round(calibration.spacingM() / TYPICAL_MPS * rate.hz()));
    long along = Math.round(TYPICAL_LENGTH_M / TYPICAL_MPS * rate.hz());
    List<Edge> edges = new ArrayList<>();
    for (Gate gate : Gate.values()) {
      long at = gate == Gate.A ? 0 : across;
      edges.add(new Edge(1, gate, EdgeKind.BLOCKED, at, 0));
      edges.add(new Edge(1, gate, EdgeKind.CLEAR, at + along, 0));
    }
    edges.sort(Comparator.comparingLong(Edge::ticks));
    for (int i = 0; i < edges.size(); i++) {
      Edge edge = edges.get(i);
      edges.set(i, new Edge(i + 1, edge.gate(), edge.kind(), edge.ticks(), 0));
    }
    return Passage.of(edges);
  }
}
