package castwell.capture.view.shot;

import castwell.capture.store.RawFacts.ExportedEdge;
import castwell.capture.view.Meaning;
import java.util.Optional;

/** A raw edge, as the board stamped it. */
public record EdgeView(
    @Meaning("the board's name") String device,
    @Meaning("2 and on when the board's name came again with other edges under known numbers")
        int series,
    @Meaning("the board's count of its starts") int boot,
    @Meaning("its number in that boot") int edge,
    @Meaning("A nearer the bow, B farther") String gate,
    @Meaning("B blocked, C clear, G two edges in one stamp") String kind,
    @Meaning(value = "the board's 32-bit counter, wrapping", unit = "tick") long ticks,
    @Meaning(value = "the most by which the stamp may be late", unit = "tick") int late,
    @Meaning("the passage it is part of") Optional<String> shotId,
    @Meaning("where its gates stand") Optional<String> station) {

  public static EdgeView of(ExportedEdge edge) {
    return new EdgeView(
        edge.device(),
        edge.series(),
        edge.boot(),
        edge.number(),
        edge.gate(),
        edge.kind(),
        edge.ticks(),
        edge.late(),
        edge.shotId(),
        edge.station());
  }
}
