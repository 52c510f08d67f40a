package castwell.analysis.shot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Passages written short, for tests. */
public final class Passages {
  private Passages() {}

  /**
   * Edges apart by blanks, each {@code [number:]gate kind ticks[~late]} without blanks, as in
   * {@code "AB0 BB22503~20 AC26541"}; without a number they count from 1 in the order written.
   */
  public static List<Edge> edges(String text) {
    List<Edge> edges = new ArrayList<>();
    for (String word : text.strip().split(" +")) {
      int colon = word.indexOf(':');
      int number = colon < 0 ? edges.size() + 1 : Integer.parseInt(word, 0, colon, 10);
      String[] rest = word.substring(colon + 1).split("~");
      edges.add(
          new Edge(
              number,
              Gate.valueOf(rest[0].substring(0, 1)),
              EdgeKind.ofLetter(rest[0].charAt(1)),
              Long.parseLong(rest[0].substring(2)),
              rest.length > 1 ? Integer.parseInt(rest[1]) : 0));
    }
    return edges;
  }

  public static Passage of(String text) {
    return Passage.of(edges(text));
  }

  /** Numbered anew in the order of their ticks, as a board would. */
  public static Passage stamped(List<Edge> edges) {
    List<Edge> sorted = new ArrayList<>(edges);
    sorted.sort(Comparator.comparingLong(Edge::ticks));
    List<Edge> numbered = new ArrayList<>();
    for (Edge e : sorted) {
      numbered.add(new Edge(numbered.size() + 1, e.gate(), e.kind(), e.ticks(), e.lateTicks()));
    }
    return Passage.of(numbered);
  }
}
