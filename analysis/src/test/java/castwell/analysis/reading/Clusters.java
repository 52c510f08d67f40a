package castwell.analysis.reading;

import castwell.analysis.reading.ClusterCut.Open;
import castwell.analysis.shot.Edge;
import java.util.ArrayList;
import java.util.List;

/** Cuts a whole stream of edges to clusters. */
final class Clusters {
  private Clusters() {}

  /**
   * @param edges in the order in which they were stamped
   */
  static List<List<Edge>> of(ClusterCut cut, Iterable<Edge> edges, double hz) {
    List<List<Edge>> clusters = new ArrayList<>();
    Open open = null;
    for (Edge edge : edges) {
      if (open != null && cut.joins(open, edge, hz)) {
        open = open.with(edge);
      } else {
        clusters.add(new ArrayList<>());
        open = Open.begin(edge);
      }
      clusters.get(clusters.size() - 1).add(edge);
    }
    return clusters;
  }
}
