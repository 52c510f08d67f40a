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

  private static final int CORRUPT = 11;
  private static final int FULL = 13;
  private static final int CANT_OPEN = 14;
  private static final int NO_DATABASE = 26;

  private StoreUnavailable(String sentence, Throwable cause) {
    super(sentence, cause);
  }

  /** What the machine's trouble is, if it is that. Source: SQLite's "Result and Error Codes". */
  static Optional<StoreUnavailable> of(Path folder, RuntimeException e) {
    return code(e)
        .flatMap(code -> sentence(folder, code))
        .map(sentence -> new StoreUnavailable(sentence, e));
  }

  /** The same as far as it is the disk's, and not the file's own. */
  static Optional<StoreUnavailable> ofDisk(Path file, RuntimeException e) {
    return code(e)
        .filter(code -> code != CORRUPT && code != CANT_OPEN && code != NO_DATABASE)
        .flatMap(code -> of(file, e));
  }

  private static Optional<Integer> code(RuntimeException e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLiteException sqlite) {
        return Optional.of(code(sqlite.getResultCode()));
      }
    }
    return Optional.empty();
  }

  private static int code(SQLiteErrorCode told) {
    return told == SQLiteErrorCode.SQLITE_IOERR_SHMSIZE // what is beside the file found no room
        ? FULL
        : told.code & 0xFF; // the rest says more of the same
  }

  private static Optional<String> sentence(Path folder, int code) {
    String what =
        switch (code) {
          case 5, 6 -> "%s is held by another program: end that one.";
          case 8 -> "%s is read-only: look to its disk.";
          case 10 -> "%s can't be read or written: look to its disk.";
          case CORRUPT, NO_DATABASE -> "%s is damaged: stop Castwell and put back a backup.";
          case FULL -> "The disk of %s is full: free some space.";
          case CANT_OPEN -> "%s can't be opened: look to its disk.";
          default -> "";
        };
    return what.isEmpty() ? Optional.empty() : Optional.of(what.formatted(folder));
  }
}
