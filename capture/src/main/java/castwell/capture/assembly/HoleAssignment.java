package castwell.capture.assembly;

import castwell.analysis.reading.ClusterCut;
import castwell.analysis.shot.Edge;
import java.util.ArrayList;
import java.util.List;

/**
 * Decides to which passage a missing edge belongs. Inside a group there is no question. Between two
 * groups the heartbeats tell when it was stamped, and an incomplete neighbour is the likelier
 * owner. Where neither lacks it, the edge was of an object of its own.
 */
final class HoleAssignment {
  private final Grouping grouping;
  private final BeatLog beats;

  HoleAssignment(Grouping grouping, BeatLog beats) {
    this.grouping = grouping;
    this.beats = beats;
  }

  /**
   * @param groups the groups of edges that arrived, in ascending number
   * @param holes the numbers of the missing edges, ascending
   */
  List<Candidate> assign(List<List<Edge>> groups, List<Integer> holes) {
    List<List<Integer>> lost = new ArrayList<>();
    groups.forEach(group -> lost.add(new ArrayList<>()));
    List<Candidate> own = new ArrayList<>();
    for (List<Integer> run : runs(holes)) {
      int owner = owner(groups, run);
      if (owner < 0) {
        own.add(new Candidate(List.of(), run));
      } else {
        lost.get(owner).addAll(run);
      }
    }
    List<Candidate> candidates = new ArrayList<>(own);
    for (int i = 0; i < groups.size(); i++) {
      candidates.add(new Candidate(groups.get(i), lost.get(i)));
    }
    candidates.sort((a, b) -> Integer.compare(a.first(), b.first()));
    return candidates;
  }

  /**
   * Splits the holes into runs of consecutive numbers; between two runs edges arrived, or there was
   * a long silence.
   */
  private List<List<Integer>> runs(List<Integer> holes) {
    long longSilence = grouping.ticks(ClusterCut.A_ALONE_S);
    List<List<Integer>> runs = new ArrayList<>();
    for (int hole : holes) {
      List<Integer> last = runs.isEmpty() ? List.of() : runs.get(runs.size() - 1);
      boolean follows = !last.isEmpty() && last.get(last.size() - 1) == hole - 1;
      if (!follows || beats.silentBefore(hole) > longSilence) {
        runs.add(new ArrayList<>());
      }
      runs.get(runs.size() - 1).add(hole);
    }
    return runs;
  }

  private int owner(List<List<Edge>> groups, List<Integer> run) {
    int next = 0;
    while (next < groups.size() && firstNumber(groups.get(next)) < run.get(0)) {
      next++;
    }
    int previous = next - 1;
    if (previous >= 0 && lastNumber(groups.get(previous)) > run.get(0)) {
      return previous;
    }
    if (previous >= 0 && mayEnd(groups.get(previous), run)) {
      return previous;
    }
    return next < groups.size() && mayBegin(groups.get(next), run) ? next : -1;
  }

  private boolean mayEnd(List<Edge> group, List<Integer> run) {
    var notYet = beats.notYetAt(run.get(0));
    long patience = grouping.ticks(grouping.patienceS(group));
    boolean inReach =
        notYet.isEmpty() || notYet.getAsLong() - Grouping.lastTicks(group) <= patience;
    boolean near = !Holes.isLeap(lastNumber(group), run.get(0));
    return near && inReach && Grouping.lacksEnd(group);
  }

  private boolean mayBegin(List<Edge> group, List<Integer> run) {
    var already = beats.alreadyAt(run.get(run.size() - 1));
    boolean inReach =
        already.isEmpty()
            || Grouping.firstTicks(group) - already.getAsLong()
                <= grouping.ticks(ClusterCut.A_ALONE_S);
    boolean near = !Holes.isLeap(run.get(run.size() - 1), firstNumber(group));
    return near && inReach && Grouping.lacksBeginning(group);
  }

  private static int firstNumber(List<Edge> group) {
    return group.get(0).number();
  }

  private static int lastNumber(List<Edge> group) {
    return group.get(group.size() - 1).number();
  }
}
