package castwell.analysis.verdict;

import castwell.analysis.reading.ArrowRead;
import castwell.analysis.reading.Part;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.speed.MixedSpeed;
import castwell.analysis.wording.Amount;
import castwell.analysis.wording.Phrase;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What there is to tell of an arrow that counts. */
final class Notes {
  private static final double MOSTLY = 0.5;

  private final Evidence evidence;
  private final ArrowRead arrow;
  private final List<Phrase> told = new ArrayList<>();

  private Notes(Evidence evidence, ArrowRead arrow) {
    this.evidence = evidence;
    this.arrow = arrow;
  }

  static List<Phrase> of(Evidence evidence) {
    return evidence.arrow().map(arrow -> new Notes(evidence, arrow).tell()).orElse(List.of());
  }

  private List<Phrase> tell() {
    contradiction().ifPresent(told::add);
    for (Gate gate : Gate.values()) {
      nearest(gate).ifPresent(told::add);
    }
    return told;
  }

  private Optional<Phrase> contradiction() {
    MixedSpeed mixed = arrow.speed();
    if (mixed.both() >= MOSTLY) {
      return Optional.empty();
    }
    boolean front = mixed.front() > mixed.tail();
    boolean reached = ArrowRead.isHeard(Math.min(mixed.front(), mixed.tail()));
    return Optional.of(
        Phrase.of(
            reached
                ? front ? "verdict.front_fits_better" : "verdict.tail_fits_better"
                : front ? "verdict.front_alone_fits" : "verdict.tail_alone_fits",
            Amount.speed(evidence.measurement().front().orElseThrow().value()),
            Amount.speed(evidence.measurement().tail().orElseThrow().value())));
  }

  /** What the gate saw beside the arrow, as a blocked run: of several, the nearest. */
  private record Run(Edge from, Edge to) {}

  private Optional<Phrase> nearest(Gate gate) {
    return runs(gate).stream()
        .min(Comparator.comparingLong(run -> ticksFromArrow(run, gate)))
        .map(run -> told(run, gate));
  }

  private List<Run> runs(Gate gate) {
    List<Edge> edges =
        evidence.passage().edges().stream()
            .filter(edge -> edge.gate() == gate)
            .filter(edge -> evidence.reading().parts().get(edge.number()) == Part.OTHER)
            .sorted(Comparator.comparingLong(Edge::ticks))
            .toList();
    List<Run> runs = new ArrayList<>();
    for (int i = 0; i + 1 < edges.size(); i++) {
      Run run = new Run(edges.get(i), edges.get(i + 1));
      if (run.from.kind() == EdgeKind.BLOCKED && run.to.kind() == EdgeKind.CLEAR) {
        runs.add(run);
      }
    }
    return runs;
  }

  private boolean isBefore(Run run, Gate gate) {
    return run.from.ticks() < arrow.ends().front(gate).orElseThrow().ticks();
  }

  private long ticksFromArrow(Run run, Gate gate) {
    return isBefore(run, gate)
        ? arrow.ends().front(gate).orElseThrow().ticks() - run.from.ticks()
        : run.from.ticks() - arrow.ends().tail(gate).orElseThrow().ticks();
  }

  private Phrase told(Run run, Gate gate) {
    return Phrase.of(
        isBefore(run, gate) ? "verdict.beside_before" : "verdict.beside_after",
        gate,
        duration(run.to.ticks() - run.from.ticks()),
        duration(ticksFromArrow(run, gate)));
  }

  private Amount duration(long ticks) {
    return Amount.duration(ticks / evidence.tickRate().hz());
  }
}
