package castwell.capture.gates;

import castwell.analysis.gates.GateFindings;
import castwell.analysis.gates.GateShot;
import castwell.analysis.gates.KnownLength;
import castwell.analysis.speed.Calibration;
import castwell.capture.store.Calibrations;
import castwell.capture.store.FrontsAndTails.FrontAndTail;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Transaction;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What a session's shots tell of its gates: those that were shot through the gates as its last shot
 * was, since one that was measured or moved in between is another pair.
 */
public final class SessionGates {
  /** What was shot longer ago says nothing of how the gates stand now. */
  private static final Duration RUNNING = Duration.ofHours(3);

  private SessionGates() {}

  /** Empty where none of its shots has four edges and counts. */
  public static Optional<GateFindings> of(Transaction t, Session session) {
    return of(t, session, Instant.MIN);
  }

  /** What the session tells that goes on at a station. */
  public static Optional<GateFindings> running(Transaction t, String station, Instant now) {
    return t.sessions().at(station, now).flatMap(session -> of(t, session, now.minus(RUNNING)));
  }

  private static Optional<GateFindings> of(Transaction t, Session session, Instant since) {
    List<FrontAndTail> shots = t.frontsAndTails().ofSession(session.id());
    if (shots.isEmpty() || shots.get(shots.size() - 1).fired().isBefore(since)) {
      return Optional.empty();
    }
    long last = shots.get(shots.size() - 1).calibrationId();
    List<FrontAndTail> same = shots.stream().filter(s -> s.calibrationId() == last).toList();
    return t.calibrations().of(session.station()).stream()
        .filter(entry -> entry.id() == last)
        .map(Calibrations.Entry::calibration)
        .findFirst()
        .flatMap(gates -> GateFindings.of(shots(same, gates), gates));
  }

  private static List<GateShot> shots(List<FrontAndTail> told, Calibration gates) {
    Instant first = told.get(0).fired();
    return told.stream()
        .map(
            shot ->
                new GateShot(
                    Duration.between(first, shot.fired()).toMillis() / 1e3,
                    shot.lengthM(),
                    residualM(shot, gates.spacingM()),
                    known(shot)))
        .toList();
  }

  private static double residualM(FrontAndTail shot, double spacingM) {
    return GateShot.residualM(spacingM, shot.speedMps(), shot.frontMps(), shot.tailMps());
  }

  private static Optional<KnownLength> known(FrontAndTail shot) {
    return shot.arrow()
        .filter(name -> shot.arrowLengthM().isPresent())
        .map(name -> new KnownLength(name, shot.arrowLengthM().getAsDouble(), KnownLength.TAPE_UM));
  }
}
