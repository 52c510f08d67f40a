package castwell.capture.station;

import castwell.capture.store.Store;
import java.time.Instant;
import java.util.OptionalLong;

/** One stretch of listening over one link; it is entered in the store once something was heard. */
public final class Listening {
  private final Store store;
  private final String station;
  private final String source;
  private final Instant opened;
  private final long openedMicros;
  private OptionalLong id = OptionalLong.empty();

  /**
   * @param source the port, or the recording
   * @param openedMicros the host's monotonic clock then
   */
  Listening(Store store, String station, String source, Instant opened, long openedMicros) {
    this.store = store;
    this.station = station;
    this.source = source;
    this.opened = opened;
    this.openedMicros = openedMicros;
  }

  /** Its row number, if it was entered already. */
  OptionalLong entered() {
    return id;
  }

  /** Its row number; it is entered now if it wasn't. */
  public long id() {
    if (id.isEmpty()) {
      id = OptionalLong.of(store.write(t -> t.boards().listening(station, source, opened)));
    }
    return id.getAsLong();
  }

  /** Microseconds of this stretch. */
  long sinceOpened(long micros) {
    return micros - openedMicros;
  }

  /** The host's monotonic clock. */
  long micros(double sinceOpened) {
    return openedMicros + Math.round(sinceOpened);
  }
}
