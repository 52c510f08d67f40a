package castwell.capture.assembly;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passage;
import java.util.List;

/**
 * Edges that may make up one passage.
 *
 * @param edges the edges that arrived, ascending; may be empty
 * @param lost the numbers of the edges that haven't arrived, ascending; may be empty
 */
record Candidate(List<Edge> edges, List<Integer> lost) {

  boolean hasEdges() {
    return !edges.isEmpty();
  }

  int first() {
    return toPassage(false, false).firstEdge();
  }

  Passage toPassage(boolean boardRestarted, boolean edgesDropped) {
    return new Passage(edges, lost, boardRestarted, edgesDropped);
  }
}
