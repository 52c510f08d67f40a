package castwell.capture.device;

import castwell.analysis.wording.Phrase;

/**
 * What a station's reader tells the capture loop. Times are readings of the host's monotonic clock
 * in microseconds, which can be compared within one run of the program only.
 */
public sealed interface Signal {

  String station();

  long micros();

  /** The port was opened; the link may be written to until {@link Closed}. */
  record Opened(String station, long micros, String port, Link link) implements Signal {

    /** The same link, as if it had been opened later. */
    public Opened at(long later) {
      return new Opened(station, later, port, link);
    }
  }

  /** Bytes came over the link. */
  record Received(String station, long micros, byte[] bytes) implements Signal {}

  /** The link is gone, or couldn't be opened; another try follows. */
  record Closed(String station, long micros, Phrase why) implements Signal {}
}
