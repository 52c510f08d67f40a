package castwell.capture.store;

import java.nio.file.Path;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * The store can't be used now, through no fault of what was to be done: as one sentence that says
 * what to do. Nothing of it was done; it may be tried again.
 */
public final class StoreUnavailable extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private StoreUnavailable(String sentence, Throwable cause) {
    super(sentence, cause);
  }

  /** What the machine's trouble is, if it is that. Source: SQLite's "Result and Error Codes". */
  static Optional<StoreUnavailable> of(Path folder, RuntimeException e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLiteException sqlite) {
        return sentence(folder, sqlite.getResultCode()).map(s -> new StoreUnavailable(s, e));
      }
    }
    return Optional.empty();
  }

  private static Optional<String> sentence(Path folder, SQLiteErrorCode code) {
    String what = switch (code.code & 0xFF) { // the rest says more of the same
          case 5, 6 -> "%s is held by another program: end that one.";
          case 8 -> "%s has become read-only: look to its disk.";
          case 10 -> "%s can't be read or written any more: look to its disk.";
          case 11, 26 -> "%s is damaged: stop Castwell and put back a backup.";
          case 13 -> "The disk of %s is full: free some space.";
          case 14 -> "%s can't be opened any more: look to its disk.";
          default -> "";
        };
    return what.isEmpty() ? Optional.empty() : Optional.of(what.formatted(folder));
  }
}
