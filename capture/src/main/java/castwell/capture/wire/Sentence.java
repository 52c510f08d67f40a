package castwell.capture.wire;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.util.Optional;
import java.util.OptionalInt;

/** What a board said in one line, its CRC right and its fields in range. */
public sealed interface Sentence {

  /** The running number of the line, 0 to 65535, wrapping. */
  int line();

  /** Which start of the board it is of, 0 to 65535. */
  int boot();

  /**
   * Who the board is.
   *
   * @param hz nominal tick rate
   * @param latencyANs how many nanoseconds late gate A's stamps are by construction, signed
   * @param keep how many of the last edges the board can send again
   * @param cause why it started: P power, E reset pin, B brown-out, W watchdog, U unknown
   */
  record Identity(
      int line,
      int protocol,
      String firmware,
      String device,
      int boot,
      int hz,
      int latencyANs,
      int latencyBNs,
      int keep,
      char cause)
      implements Sentence {}

  /**
   * One stamped edge.
   *
   * @param ticks the 32-bit counter
   * @param late the most ticks by which the stamp may be late
   */
  record EdgeSeen(int line, int boot, int number, Gate gate, EdgeKind kind, long ticks, int late)
      implements Sentence {}

  /**
   * The board's regular sign of life.
   *
   * @param ticks48 the counter, 48 bits, when the sentence was composed
   * @param queued bytes that waited ahead of it on the wire
   * @param edges the highest edge number so far
   * @param bytes the length of its own line on the wire, line end included
   */
  record Heartbeat(
      int line,
      int boot,
      long ticks48,
      int queued,
      int edges,
      int merged,
      int dropped,
      Optional<Levels> levels,
      Surroundings surroundings,
      int bytes)
      implements Sentence {}

  /** The gates' pins at a heartbeat: blocked or not. */
  record Levels(boolean blockedA, boolean blockedB) {}

  /**
   * What the board measures besides edges, each where it has the sensor.
   *
   * @param lightA light level, 0 to 1023
   * @param supplyMv supply voltage in millivolts
   * @param chipCentiC chip temperature in hundredths of a degree Celsius
   * @param airCentiC air temperature likewise
   * @param humidityCentiPercent relative humidity in hundredths of a percent
   */
  record Surroundings(
      OptionalInt lightA,
      OptionalInt lightB,
      OptionalInt supplyMv,
      OptionalInt chipCentiC,
      OptionalInt airCentiC,
      OptionalInt humidityCentiPercent) {}

  /** Edges that the board could not store or queue. */
  record Loss(int line, int boot, Gate gate, long firstTicks, long lastTicks, long count)
      implements Sentence {}

  /** Edges that the board no longer keeps: the answer to a request for them. */
  record Missing(int line, int boot, int first, int last) implements Sentence {}

  /** A key was pressed. */
  record Key(int line, int boot, int key, Press press, long ticks) implements Sentence {}

  enum Press {
    SHORT,
    LONG
  }
}
