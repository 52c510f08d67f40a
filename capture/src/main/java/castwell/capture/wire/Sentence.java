package castwell.capture.wire;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.util.Optional;
import java.util.OptionalInt;

/** What a board said in one line, of which the CRC is right and the fields are in range. */
public sealed interface Sentence {

  /** The running number of the line, 0 to 65535, wrapping. */
  int line();

  /** The board's count of its starts, 0 to 65535. */
  int boot();

  /**
   * The board says who it is.
   *
   * @param protocol the version of the serial protocol, from 1
   * @param hz nominal tick rate
   * @param latencyANs how many nanoseconds late gate A's stamps are by construction, signed
   * @param latencyBNs the same for gate B
   * @param keep how many of the last edges the board can send again
   * @param cause why the board started: P power, E reset pin, B brown-out, W watchdog, U unknown
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
   * @param number the edge's number since the board started, from 1
   * @param ticks the 32-bit counter when the edge was stamped
   * @param late the most ticks by which the stamp may be late
   */
  record EdgeSeen(int line, int boot, int number, Gate gate, EdgeKind kind, long ticks, int late)
      implements Sentence {}

  /**
   * The board's regular sign of life.
   *
   * @param ticks48 the 48-bit counter when the sentence was composed
   * @param queued the number of bytes that waited ahead of it on the wire
   * @param edges the highest edge number so far
   * @param merged how many stamps held two edges so far
   * @param dropped how many edges the board dropped so far
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

  /** Whether each gate was blocked at a heartbeat. */
  record Levels(boolean blockedA, boolean blockedB) {}

  /**
   * What the board measures besides edges; each value is there where the board has its sensor.
   *
   * @param lightA gate A's light level, 0 to 1023
   * @param lightB gate B's light level, 0 to 1023
   * @param supplyMv supply voltage in millivolts
   * @param chipCentiC chip temperature in hundredths of a degree Celsius
   * @param airCentiC air temperature in hundredths of a degree Celsius
   * @param humidityCentiPercent relative humidity in hundredths of a percent
   */
  record Surroundings(
      OptionalInt lightA,
      OptionalInt lightB,
      OptionalInt supplyMv,
      OptionalInt chipCentiC,
      OptionalInt airCentiC,
      OptionalInt humidityCentiPercent) {}

  /** The board could not store or queue so many edges of one gate, stamped between two ticks. */
  record Loss(int line, int boot, Gate gate, long firstTicks, long lastTicks, long count)
      implements Sentence {}

  /** The board answers a request for edges that it no longer keeps. */
  record Missing(int line, int boot, int first, int last) implements Sentence {}

  /** A key was pressed. */
  record Key(int line, int boot, int key, Press press, long ticks) implements Sentence {}

  enum Press {
    SHORT,
    LONG
  }
}
