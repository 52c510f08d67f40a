package castwell.capture.view.gates;

import castwell.analysis.gates.GateFindings;
import castwell.capture.view.Meaning;
import java.util.List;
import java.util.Optional;

/** What a session's shots tell of the gates that they went through. */
public record SessionGatesView(
    String session,
    @Meaning("where the gates stand") String station,
    @Meaning("what is the matter, if anything") List<String> sentences,
    @Meaning("empty while no shot that counts has four edges")
        Optional<FrontOverTailView> frontOverTail,
    @Meaning("whether its tails are corrected to its fronts") boolean frontsTrusted,
    @Meaning("from ten shots on") Optional<GateTrendView> trend,
    @Meaning("for each gate, from arrows of known length") List<GateLengthView> lengths,
    @Meaning("from ten shots of arrows of known length on") Optional<SpacingView> spacing) {

  public static SessionGatesView of(
      String session,
      String station,
      Optional<GateFindings> found,
      boolean frontsTrusted,
      List<String> sentences) {
    return new SessionGatesView(
        session,
        station,
        sentences,
        found.map(told -> FrontOverTailView.of(told.frontOverTail(), told.spacingM())),
        frontsTrusted,
        found.flatMap(told -> told.trend().map(trend -> GateTrendView.of(trend, told.spacingM()))),
        found.stream().flatMap(told -> told.overKnown().stream()).map(GateLengthView::of).toList(),
        found.flatMap(GateFindings::spacing).map(SpacingView::of));
  }
}
