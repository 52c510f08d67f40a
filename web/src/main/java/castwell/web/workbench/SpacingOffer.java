package castwell.web.workbench;

import static castwell.web.unit.Dimension.FINE_LENGTH;

import castwell.analysis.gates.GateFindings;
import castwell.analysis.gates.SpacingFromLengths;
import castwell.capture.gates.SessionGates;
import castwell.capture.store.Sessions.Session;
import castwell.capture.word.Rounded;
import java.util.Optional;

/**
 * The spacing that the last session's arrows of known length tell, beside the one entered.
 *
 * @param told the spacing with its uncertainty, of how many shots
 * @param against whether it agrees with the one entered
 * @param spacing in the reader's unit, for the form by which a person may take it over
 * @param spacingU its uncertainty, likewise
 */
public record SpacingOffer(String told, String against, String spacing, String spacingU) {

  /** Empty where too few shots were of arrows of known length. */
  static Optional<SpacingOffer> of(PageRequest request, String station) {
    return request
        .t()
        .sessions()
        .at(station, request.now())
        .flatMap(
            session ->
                SessionGates.of(request.t(), session)
                    .flatMap(GateFindings::spacing)
                    .map(told -> of(request, session, told)));
  }

  private static SpacingOffer of(PageRequest request, Session session, SpacingFromLengths told) {
    return new SpacingOffer(
        request.say(
            "gates_told.ruler_of",
            told.shots(),
            told.arrows(),
            session.name(),
            request.speech().figure(FINE_LENGTH, told.spacingM())),
        request.say(told.disagrees() ? "gates_told.differs" : "gates_told.agrees"),
        inUnit(request, told.spacingM().value()),
        inUnit(request, told.spacingM().standardUncertainty()));
  }

  private static String inUnit(PageRequest request, double metres) {
    return Rounded.to(1, request.speech().in(FINE_LENGTH, metres));
  }
}
