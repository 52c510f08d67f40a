package castwell.capture.store;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Telling;
import java.nio.file.Path;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * The store can't be used now, for a reason outside the work that was to be done. Nothing of that
 * work was done, and it may be tried again.
 */
public final class StoreUnavailable extends RuntimeException implements Telling {
  private static final long serialVersionUID = 1L;

  private static final int CORRUPT = 11;
  private static final int FULL = 13;
  private static final int CANT_OPEN = 14;
  private static final int NO_DATABASE = 26;

  private final transient Phrase phrase;

  private StoreUnavailable(Phrase phrase, Throwable cause) {
    super(phrase.written(), cause);
    this.phrase = phrase;
  }

  @Override
  public Phrase phrase() {
    return phrase;
  }

  /**
   * The trouble of the machine behind an exception; empty if it has another cause. Source: SQLite's
   * "Result and Error Codes".
   */
  static Optional<StoreUnavailable> of(Path folder, RuntimeException e) {
    return code(e)
        .map(StoreUnavailable::key)
        .filter(key -> !key.isEmpty())
        .map(key -> new StoreUnavailable(Phrase.of(key, folder), e));
  }

  /**
   * The trouble of the disk behind an exception; empty if it has another cause, such as a fault
   * within the file.
   */
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
    // There was no room for the file that SQLite keeps beside the database.
    return told == SQLiteErrorCode.SQLITE_IOERR_SHMSIZE
        ? FULL
        : told.code & 0xFF; // The higher bits only say more of the same error.
  }

  private static String key(int code) {
    return switch (code) {
      case 5, 6 -> "store.held";
      case 8 -> "store.read_only";
      case 10 -> "store.input_output";
      case CORRUPT, NO_DATABASE -> "store.damaged";
      case FULL -> "store.full";
      case CANT_OPEN -> "store.cant_open";
      default -> "";
    };
  }
}
