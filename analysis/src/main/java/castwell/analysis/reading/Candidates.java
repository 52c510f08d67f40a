package castwell.analysis.reading;

import java.util.ArrayList;
import java.util.List;

/**
 * What an arrow's front and tail could be at one gate, as indexes of its edges.
 *
 * @param whole all pairs of a front and a later tail, the time between them an arrow's
 * @param fronts each front without a tail
 * @param tails each tail without a front
 */
record Candidates(List<Candidate> whole, List<Candidate> fronts, List<Candidate> tails) {
  static final int NONE = -1;

  /** A front and a tail, one of them perhaps {@link #NONE}. */
  record Candidate(int front, int tail) {}

  static Candidates of(GateEdges gate, Prior prior) {
    Candidates found = new Candidates(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    for (int i = 0; i < gate.count(); i++) {
      if (gate.blocked[i]) {
        found.fronts.add(new Candidate(i, NONE));
        found.addWhole(gate, i, prior);
      } else if (gate.isClear(i)) {
        found.tails.add(new Candidate(NONE, i));
      }
    }
    return found;
  }

  private void addWhole(GateEdges gate, int front, Prior prior) {
    for (int tail = front + 1; tail < gate.count(); tail++) {
      if (gate.isClear(tail) && prior.canBlock(gate.seconds[tail] - gate.seconds[front])) {
        whole.add(new Candidate(front, tail));
      }
    }
  }
}
