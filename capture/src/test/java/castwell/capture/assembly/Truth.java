package castwell.capture.assembly;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passage;
import java.util.List;
import java.util.Set;

/** The passage that a host should make of one object's stamps. */
final class Truth {
  private Truth() {}

  static Passage whole(List<Stamp> stamps) {
    return without(stamps, Set.of());
  }

  /**
   * @param lost numbers of edges whose lines never arrived
   */
  static Passage without(List<Stamp> stamps, Set<Integer> lost) {
    List<Edge> edges =
        stamps.stream().filter(s -> !lost.contains(s.number())).map(Stamp::edge).toList();
    List<Integer> missed =
        stamps.stream().map(Stamp::number).filter(lost::contains).sorted().toList();
    return new Passage(edges, missed, false);
  }
}
