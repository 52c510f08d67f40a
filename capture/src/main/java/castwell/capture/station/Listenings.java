package castwell.capture.station;

import castwell.capture.store.Store;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;

/**
 * The store's rows of a station's stretches of listening. Each is entered once something was heard
 * over it, in a transaction of its own, so that the row outlives a transaction that is undone. One
 * thread uses this.
 */
public final class Listenings {
  private final Store store;
  private final Map<Listening, Long> rows = new HashMap<>();

  public Listenings(Store store) {
    this.store = store;
  }

  /** Enters the stretch if it wasn't entered yet, and returns its row. */
  public long enter(Listening listening) {
    Long row = rows.get(listening);
    if (row == null) {
      row =
          store.write(
              t ->
                  t.boards()
                      .listening(listening.station(), listening.source(), listening.opened()));
      rows.put(listening, row);
    }
    return row;
  }

  /** The stretch's row; empty while it wasn't entered. */
  OptionalLong row(Listening listening) {
    Long row = rows.get(listening);
    return row == null ? OptionalLong.empty() : OptionalLong.of(row);
  }
}
