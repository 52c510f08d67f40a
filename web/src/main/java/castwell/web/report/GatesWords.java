package castwell.web.report;

import castwell.analysis.gates.GateFindings;
import castwell.analysis.wording.Phrase;
import castwell.capture.gates.GateWords;
import castwell.capture.gates.SessionGates;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Transaction;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** What sessions told of their gates, where a report must say so: else nothing is said. */
public final class GatesWords {
  private GatesWords() {}

  /** All that is the matter with one session's gates. */
  public static List<String> of(Optional<GateFindings> found, ReportFormat format) {
    return found.stream()
        .flatMap(told -> GateWords.of(told).stream())
        .map(format.speech()::say)
        .toList();
  }

  /**
   * The sessions, by their names, whose tails came late or early, which moves their speeds against
   * those of others.
   */
  public static List<String> of(Transaction t, Collection<String> sessions, ReportFormat format) {
    return sessions.stream()
        .distinct()
        .flatMap(name -> t.sessions().byName(name).stream())
        .flatMap(session -> of(t, session, format).stream())
        .toList();
  }

  private static Optional<String> of(Transaction t, Session session, ReportFormat format) {
    Optional<Phrase> told = SessionGates.of(t, session).flatMap(GateWords::frontOverTail);
    return told.map(
        phrase ->
            format.say("report.gates.in_session", session.name(), format.speech().say(phrase)));
  }
}
