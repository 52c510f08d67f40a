package castwell.analysis.speed;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.Optional;

/**
 * When each gate saw each end of one object, in seconds from the first of these stamps.
 *
 * <p>The source "tick rate" is common to the set-up. Each stamp has two sources of its own: "tick",
 * since it is true within one tick only, and "lateness", since it is late by anything from 0 to its
 * bound.
 */
public record Stamps(Ends ends, TickRate rate, StampLatency latency) {
  /** The standard deviation of a rectangular distribution of width 1 (JCGM 100:2008, 4.3.7). */
  private static final double UNIT_RECTANGLE = 1 / Math.sqrt(12);

  public Stamps(Passage passage, TickRate rate, StampLatency latency) {
    this(Ends.of(passage), rate, latency);
  }

  /**
   * The seconds from the front at gate A to the front at gate B; empty when one of them is missing.
   */
  public Optional<Quantity> betweenFronts() {
    return seconds(Gate.A, End.FRONT).flatMap(a -> seconds(Gate.B, End.FRONT).map(b -> b.minus(a)));
  }

  Optional<Quantity> seconds(Gate gate, End end) {
    return ends.edge(gate, end).map(edge -> seconds(edge, place(gate, end), gate));
  }

  /** The words by which a source's name tells one end at one gate from the others. */
  static String place(Gate gate, End end) {
    return " at gate " + gate + ", " + end.word();
  }

  private Quantity seconds(Edge edge, String place, Gate gate) {
    return ticks(edge, place)
        .dividedBy(rate.quantity())
        .minus(Quantity.exact(latency.seconds(gate)));
  }

  private Quantity ticks(Edge edge, String place) {
    double sinceTheFirst = edge.ticks() - firstTicks();
    double late = edge.lateTicks();
    return Quantity.of(sinceTheFirst, UNIT_RECTANGLE, Source.own("tick" + place))
        .minus(Quantity.of(late / 2, late * UNIT_RECTANGLE, Source.own("lateness" + place)));
  }

  private long firstTicks() {
    return ends.all().stream().mapToLong(Edge::ticks).min().orElseThrow();
  }
}
