package castwell.analysis.speed;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import java.util.Optional;

/** An end of the object that goes through the gates. */
enum End {
  FRONT("front"),
  TAIL("tail");

  private final String word;

  End(String word) {
    this.word = word;
  }

  String word() {
    return word;
  }

  Optional<Edge> edge(Passage passage, Gate gate) {
    return this == FRONT ? passage.front(gate) : passage.tail(gate);
  }
}
