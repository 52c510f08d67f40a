package castwell.capture.derive;

import castwell.analysis.gates.FrontOverTail;
import castwell.analysis.gates.GateShot;
import castwell.analysis.reading.ArrowRead;
import castwell.analysis.reading.Limits;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.TickRate;
import castwell.capture.store.BoardFigures;
import castwell.capture.store.Conditions.SessionTold;
import castwell.capture.store.Passages;
import castwell.capture.store.Transaction;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Brings the figures of what one board shot in one session up to what is known by now.
 *
 * <p>A better tick rate is one number for all of them, so they follow it by one statement, and only
 * those near a limit are read anew. What the session tells of its gates changes how edges are read,
 * so all are; that is due only as often as the shots have doubled.
 */
public final class SessionFigures {
  /** By how much the rate may have moved since the edges were read until they are read anew. */
  private static final double FOLLOWED = 1e-4;

  private static final int FIRST_LOOK = FrontOverTail.ENOUGH;

  private final Derivation derivation;
  private final Limits limits;
  private final long sessionId;
  private final long boardId;

  SessionFigures(Derivation derivation, Limits limits, long sessionId, long boardId) {
    this.derivation = derivation;
    this.limits = limits;
    this.sessionId = sessionId;
    this.boardId = boardId;
  }

  /** Whether so many shots that count tell clearly more than the fewer before. */
  public static boolean isTelling(int shots) {
    int looked = FIRST_LOOK;
    while (looked < shots) {
      looked *= 2;
    }
    return looked == shots;
  }

  /**
   * Lets the figures follow the rate.
   *
   * @param readHz the rate at which their edges were read
   * @return that at which they are read from now on
   */
  public double follow(Transaction t, TickRate rate, double readHz, SessionTold gates) {
    if (Math.abs(rate.hz() / readHz - 1) > FOLLOWED) {
      readAnew(t, rate, gates);
      return rate.hz();
    }
    BoardFigures figures = t.boardFigures(sessionId, boardId);
    figures.follow(rate);
    figures
        .nearALimit(limits, ArrowRead.SURE_NATS, ArrowRead.MOST_RELATIVE_U)
        .forEach(id -> derivation.deriveAgain(t, t.passages().byId(id).orElseThrow(), rate, gates));
    return readHz;
  }

  /** Reads all edges anew. */
  public void readAnew(Transaction t, TickRate rate, SessionTold gates) {
    rows(t).forEach(row -> derivation.deriveAgain(t, row, rate, gates));
  }

  /**
   * Reads all edges anew at the rate that they were read at, with other knowledge of the gates.
   *
   * @return how many passages they are
   */
  public int readAnew(Transaction t, SessionTold gates) {
    List<Passages.Row> rows = rows(t);
    rows.forEach(row -> derivation.deriveAgain(t, row, gates));
    return rows.size();
  }

  private List<Passages.Row> rows(Transaction t) {
    return t.passages().ofSession(sessionId).stream()
        .filter(row -> row.boardId() == boardId)
        .toList();
  }

  /** What the figures were told of the gates. */
  public SessionTold gates(Transaction t) {
    return t.boardFigures(sessionId, boardId).newestTold().orElse(SessionTold.UNKNOWN);
  }

  /**
   * What the shots that count tell of the gates as they stood at an instant. Where the tails came
   * late against the fronts, the fronts are believed, unless a person decided otherwise; until one
   * did, what the gates may have to do with it is part of the uncertainty.
   */
  public SessionTold told(Transaction t, String station, Instant at) {
    Calibration gates = t.calibrations().inForce(station, at).orElseThrow().calibration();
    if (!(gates.triggerScatterM() > 0)) {
      return SessionTold.UNKNOWN;
    }
    double spacing = gates.spacingM();
    double[] residuals =
        t.boardFigures(sessionId, boardId).ends().stream()
            .mapToDouble(
                ends ->
                    GateShot.residualM(spacing, ends.speedMps(), ends.frontMps(), ends.tailMps()))
            .toArray();
    return FrontOverTail.ofResiduals(residuals, gates.triggerScatterM())
        .map(told -> told(told, spacing, t.frontsDecisions().of(sessionId)))
        .orElse(SessionTold.UNKNOWN);
  }

  private static SessionTold told(
      FrontOverTail told, double spacingM, Optional<Boolean> frontsTrusted) {
    boolean corrected = frontsTrusted.orElse(told.named(spacingM));
    double u = corrected && frontsTrusted.isEmpty() ? told.relativeU(spacingM) * spacingM : 0;
    return new SessionTold(told.triggerM(), corrected ? told.meanM() : 0, u);
  }
}
