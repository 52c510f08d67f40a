package castwell.analysis.verdict;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.wording.Phrase;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Both gates saw the object, but not each of them saw both its front and its tail. */
final class MissingEdge implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    Passage passage = evidence.passage();
    boolean bothGates = passage.edges().stream().map(Edge::gate).distinct().count() == 2;
    if (!bothGates || evidence.isPartlyLost() || evidence.arrow().isPresent()) {
      return Optional.empty();
    }
    List<Phrase> missing = missing(passage);
    return missing.isEmpty() ? Optional.empty() : Optional.of(new Reason("missing-edge", missing));
  }

  /** The ends of which a gate has no edge, as it is told. */
  static List<Phrase> missing(Passage passage) {
    return Stream.of(Gate.values()).flatMap(gate -> missing(passage, gate).stream()).toList();
  }

  private static List<Phrase> missing(Passage passage, Gate gate) {
    boolean merged =
        passage.edges().stream()
            .anyMatch(edge -> edge.gate() == gate && edge.kind() == EdgeKind.MERGED);
    List<Phrase> missing = new ArrayList<>();
    // A merged stamp may hold the very edge that seems to be missing.
    if (!merged) {
      if (passage.front(gate).isEmpty()) {
        missing.add(Phrase.of("verdict.missing_front", gate));
      }
      if (passage.tail(gate).isEmpty()) {
        missing.add(Phrase.of("verdict.missing_tail", gate));
      }
    }
    return missing;
  }
}
