package castwell.capture.station;

import java.time.Instant;

/**
 * One stretch of listening over one link.
 *
 * @param source the name of the port, or of the recording
 * @param opened when it began
 * @param openedMicros the host's monotonic clock when it began
 */
public record Listening(String station, String source, Instant opened, long openedMicros) {

  /** The microseconds since this stretch began, from the host's monotonic clock. */
  long sinceOpened(long micros) {
    return micros - openedMicros;
  }

  /** The host's monotonic clock, from the microseconds since this stretch began. */
  long micros(double sinceOpened) {
    return openedMicros + Math.round(sinceOpened);
  }
}
