package castwell.capture.store;

import castwell.analysis.reading.Limits;
import castwell.analysis.speed.TickRate;
import castwell.capture.store.Conditions.SessionTold;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** The figures in force of all that one board shot in one session. */
public final class BoardFigures {
  private static final String FIGURES =
      """
       FROM passage
      JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
      WHERE session_id = ? AND board_id = ? AND part_of IS NULL\s""";

  private final Handle handle;
  private final long sessionId;
  private final long boardId;

  /** The speeds of front and tail of one shot that counts, in m/s. */
  public record Ends(double speedMps, double frontMps, double tailMps) {}

  BoardFigures(Handle handle, long sessionId, long boardId) {
    this.handle = handle;
    this.sessionId = sessionId;
    this.boardId = boardId;
  }

  /**
   * Lets them follow the board's tick rate. Every speed is as many times the rate, so only how well
   * the rate is known enters anew: the uncertainty in common holds the rate's own share as a
   * square.
   */
  public void follow(TickRate rate) {
    BareSql.write(
        handle,
        """
        UPDATE figure SET
          speed_mps = speed_mps * (?1 / hz),
          speed_u_own_mps = speed_u_own_mps * (?1 / hz),
          speed_u_common_mps = (?1 / hz) * sqrt(speed_u_common_mps * speed_u_common_mps
            + speed_mps * speed_mps * (?2 * ?2 - hz_relative_u * hz_relative_u)),
          front_mps = front_mps * (?1 / hz),
          front_u_mps = (?1 / hz) * sqrt(front_u_mps * front_u_mps
            + front_mps * front_mps * (?2 * ?2 - hz_relative_u * hz_relative_u)),
          tail_mps = tail_mps * (?1 / hz),
          tail_u_mps = (?1 / hz) * sqrt(tail_u_mps * tail_u_mps
            + tail_mps * tail_mps * (?2 * ?2 - hz_relative_u * hz_relative_u)),
          read_hz = coalesce(read_hz, hz), hz = ?1, hz_relative_u = ?2
        FROM passage WHERE passage.id = figure.passage_id AND passage.calibration_id = figure.calibration_id
          AND session_id = ?3 AND board_id = ?4 AND part_of IS NULL""",
        rate.hz(),
        rate.relativeU(),
        sessionId,
        boardId);
  }

  /**
   * The passages whose verdict may change with the tick rate: those near a limit of speed, or whose
   * story is hardly likelier, or just unlikely, or hardly sure enough.
   *
   * @param enough the margin from which on a story is believed
   * @param greatestU the relative uncertainty up to which a speed is told
   */
  public List<Long> nearALimit(Limits limits, double enough, double greatestU) {
    return BareSql.list(
        handle,
        (row, context) -> row.getLong(1),
        "SELECT passage.id"
            + FIGURES
            + """
             AND (
            abs(speed_mps - ?) < 0.001 * speed_mps OR abs(speed_mps - ?) < 0.001 * speed_mps
            OR abs(margin - ?) < 0.1 OR abs(speed_u_own_mps - ? * speed_mps) < 0.001 * speed_mps)""",
        sessionId,
        boardId,
        limits.slowestMps(),
        limits.fastestMps(),
        enough,
        greatestU);
  }

  /** What the newest shot was told of the gates. */
  public Optional<SessionTold> newestTold() {
    return BareSql.first(
        handle,
        (row, context) -> Figures.conditions(row).gates(),
        "SELECT figure.*" + FIGURES + "ORDER BY fired_ms DESC LIMIT 1",
        sessionId,
        boardId);
  }

  /** Those of the shots that count and have both ends, the first first. */
  public List<Ends> ends() {
    return BareSql.list(
        handle,
        (row, context) -> new Ends(row.getDouble(1), row.getDouble(2), row.getDouble(3)),
        "SELECT speed_mps, front_mps, tail_mps"
            + FIGURES
            + "AND clean AND front_mps > 0 AND tail_mps > 0 ORDER BY fired_ms, passage.id",
        sessionId,
        boardId);
  }
}
