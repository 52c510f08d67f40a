package castwell.capture.derive;

import castwell.analysis.gates.FrontOverTail;
import castwell.analysis.reading.ArrowRead;
import castwell.analysis.reading.Limits;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.TickRate;
import castwell.capture.store.Conditions.SessionGates;
import castwell.capture.store.Figures.Ends;
import castwell.capture.store.Passages;
import castwell.capture.store.Transaction;
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
  public double follow(Transaction t, TickRate rate, double readHz, SessionGates gates) {
    if (Math.abs(rate.hz() / readHz - 1) > FOLLOWED) {
      readAnew(t, rate, gates);
      return rate.hz();
    }
    t.figures().follow(sessionId, boardId, rate);
    double[] speeds = {limits.slowestMps(), limits.fastestMps()};
    t.figures()
        .nearALimit(sessionId, boardId, speeds, ArrowRead.SURE_NATS, ArrowRead.MOST_RELATIVE_U)
        .forEach(id -> derivation.deriveAgain(t, t.passages().byId(id).orElseThrow(), rate, gates));
    return readHz;
  }

  /** Reads all edges anew. */
  public void readAnew(Transaction t, TickRate rate, SessionGates gates) {
    rows(t).forEach(row -> derivation.deriveAgain(t, row, rate, gates));
  }

  /**
   * Reads all edges anew at the rate that they were read at, with other knowledge of the gates.
   *
   * @return how many passages they are
   */
  public int readAnew(Transaction t, SessionGates gates) {
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
  public SessionGates gates(Transaction t) {
    return t.figures().newestGates(sessionId, boardId).orElse(SessionGates.UNKNOWN);
  }

  /**
   * What the shots that count tell of the gates. Where the tails came late against the fronts, the
   * fronts are believed, unless a person decided otherwise; until one did, what the gates may have
   * to do with it is part of the uncertainty.
   */
  public SessionGates gatesToldBy(Transaction t, Calibration calibration) {
    double spacing = calibration.spacingM();
    double[] residuals =
        t.figures().ends(sessionId, boardId).stream()
            .mapToDouble(ends -> residualM(ends, spacing))
            .toArray();
    if (!(calibration.triggerScatterM() > 0)) {
      return SessionGates.UNKNOWN;
    }
    return FrontOverTail.ofResiduals(residuals, calibration.triggerScatterM())
        .map(told -> gates(told, spacing, t.sessions().frontsTrusted(sessionId)))
        .orElse(SessionGates.UNKNOWN);
  }

  private static SessionGates gates(
      FrontOverTail told, double spacingM, Optional<Boolean> frontsTrusted) {
    boolean corrected = frontsTrusted.orElse(told.named(spacingM));
    double u = corrected && frontsTrusted.isEmpty() ? told.relativeU(spacingM) * spacingM : 0;
    return new SessionGates(told.triggerM(), corrected ? told.meanM() : 0, u);
  }

  /** The front over the tail, as it is before the tails are corrected. */
  private static double residualM(Ends ends, double spacingM) {
    return ends.speedMps() * spacingM * (1 / ends.frontMps() - 1 / ends.tailMps());
  }
}
