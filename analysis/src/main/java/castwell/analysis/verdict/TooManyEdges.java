package castwell.analysis.verdict;

import castwell.analysis.reading.StoryTold;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * There are more edges than fluttering fletching explains. Fletching makes a few extra edges near
 * the tail, some just after it, since comparators bounce.
 */
final class TooManyEdges implements Rule {
  static final String CODE = "too-many-edges";

  @Override
  public Optional<Reason> judge(Evidence evidence) {
    boolean judged =
        evidence.isOfNoArrow() && evidence.reading().best().kind() != StoryTold.Kind.FLOOD;
    return !judged
        ? Optional.empty()
        : Stream.of(Gate.values()).flatMap(gate -> judge(evidence, gate).stream()).findFirst();
  }

  private static Optional<Reason> judge(Evidence evidence, Gate gate) {
    Passage passage = evidence.passage();
    Optional<Edge> front = passage.front(gate);
    Optional<Edge> tail = passage.tail(gate);
    List<Edge> others =
        passage.edges().stream()
            .filter(edge -> edge.gate() == gate && edge.kind() != EdgeKind.MERGED)
            .filter(edge -> !isSame(edge, front) && !isSame(edge, tail))
            .toList();
    if (others.size() > evidence.limits().flutterEdges()) {
      return Optional.of(Reason.of(CODE, "verdict.too_many_edges", gate, others.size()));
    }
    OptionalDouble flutterTicks = flutterTicks(evidence);
    if (tail.isEmpty() || flutterTicks.isEmpty()) {
      return Optional.empty();
    }
    return others.stream()
        .filter(edge -> Math.abs(edge.ticks() - tail.get().ticks()) > flutterTicks.getAsDouble())
        .findFirst()
        .map(edge -> Reason.of(CODE, "verdict.edge_far_from_tail", gate));
  }

  private static boolean isSame(Edge edge, Optional<Edge> other) {
    return other.filter(edge::equals).isPresent();
  }

  /** How many ticks the stretch that flutters takes; empty without a speed. */
  private static OptionalDouble flutterTicks(Evidence evidence) {
    return evidence
        .measurement()
        .speed()
        .map(speed -> evidence.limits().flutterM() / speed.value() * evidence.tickRate().hz())
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }
}
