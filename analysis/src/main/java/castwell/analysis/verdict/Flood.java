package castwell.analysis.verdict;

import castwell.analysis.reading.StoryTold;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Gate;
import castwell.analysis.wording.Amount;
import java.util.Comparator;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Optional;
import java.util.stream.Stream;

/** So many edges came that no story was sought. */
final class Flood implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    return evidence.reading().best().kind() == StoryTold.Kind.FLOOD
        ? Optional.of(reason(evidence))
        : Optional.empty();
  }

  private static Reason reason(Evidence evidence) {
    List<Edge> most =
        Stream.of(Gate.values())
            .map(gate -> of(gate, evidence))
            .max(Comparator.comparingInt(List::size))
            .orElseThrow();
    LongSummaryStatistics ticks = most.stream().mapToLong(Edge::ticks).summaryStatistics();
    double seconds = (ticks.getMax() - ticks.getMin()) / evidence.tickRate().hz();
    return Reason.of(
        TooManyEdges.CODE,
        "verdict.flood",
        most.get(0).gate(),
        most.size(),
        Amount.duration(seconds));
  }

  private static List<Edge> of(Gate gate, Evidence evidence) {
    return evidence.passage().edges().stream().filter(edge -> edge.gate() == gate).toList();
  }
}
