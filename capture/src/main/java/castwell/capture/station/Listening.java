package castwell.capture.station;

import java.time.Instant;

/**
 * One stretch of listening over one link.
 *
 * @param source the port, or the recording
 * @param openedMicros the host's monotonic clock when it began
 */
public record Listening(String station, String source, Instant opened, long openedMicros) {

  /** Microseconds of this stretch. */
  long sinceOpened(long micros) {
    return micros - openedMicros;
  }

  /** The host's monotonic clock. */
  long micros(double sinceOpened) {
    return openedMicros + Math.round(sinceOpened);
  }
}
