package castwell.analysis.speed;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The edges at which each gate saw the front and the tail of one object, as far as it did. */
public record Ends(
    Optional<Edge> frontA, Optional<Edge> frontB, Optional<Edge> tailA, Optional<Edge> tailB) {

  /** Of a passage taken as one object: each gate's first "blocked" and its last "clear". */
  public static Ends of(Passage passage) {
    return new Ends(
        passage.front(Gate.A), passage.front(Gate.B), passage.tail(Gate.A), passage.tail(Gate.B));
  }

  public Optional<Edge> front(Gate gate) {
    return gate == Gate.A ? frontA : frontB;
  }

  public Optional<Edge> tail(Gate gate) {
    return gate == Gate.A ? tailA : tailB;
  }

  /** Those that there are: fronts, then tails. */
  public List<Edge> all() {
    return Stream.of(frontA, frontB, tailA, tailB).flatMap(Optional::stream).toList();
  }

  Optional<Edge> edge(Gate gate, End end) {
    return end == End.FRONT ? front(gate) : tail(gate);
  }
}
