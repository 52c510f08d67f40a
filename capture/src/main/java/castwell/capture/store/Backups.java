package castwell.capture.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConnection;

/** Copies of a data folder's database, made beside a program that writes to it. */
public final class Backups {
  private static final int PAGES_A_STEP = 1024;

  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

  private Backups() {}

  /** Where a copy goes when no other place is named: a dated file beside the database. */
  public static Path place(Path folder, Instant now) {
    return folder.resolve("backups").resolve("castwell-" + STAMP.format(now) + ".db");
  }

  /** A backup that was made and read back. */
  public record Made(Path file, long bytes, Holding holding) {}

  /**
   * Copies a folder's database as it is at one moment (SQLite's online backup), reads the copy back
   * and records it in the folder.
   *
   * @param target is there, whole, when this returns; in the place of one of that name
   * @throws StoreRefused when there is nothing to copy, or the copy isn't the same
   */
  public static Made make(Path folder, Path target, Instant now, ProgressListener progress)
      throws IOException {
    // Opening refuses a file that isn't ours, and brings an older one forward.
    Store.openToRead(folder).close();
    Jdbi jdbi = Databases.jdbi(folder.resolve(Store.FILE));
    Holding holding = jdbi.withHandle(source -> copy(source, target, progress));
    Made made = new Made(target, Files.size(target), holding);
    jdbi.useHandle(handle -> enter(handle, made, now));
    return made;
  }

  /** When this folder was last backed up. */
  static Optional<Instant> last(Handle handle) {
    return handle
        .createQuery("SELECT max(at_ms) AS last FROM backup")
        .map((row, context) -> Columns.optionalLong(row, "last"))
        .one()
        .stream()
        .mapToObj(Instant::ofEpochMilli)
        .findFirst();
  }

  static void enter(Handle handle, Made made, Instant now) {
    handle.execute(
        "INSERT INTO backup (at_ms, path, bytes) VALUES (?, ?, ?)",
        now.toEpochMilli(),
        made.file().toAbsolutePath().toString(),
        made.bytes());
  }

  /** Puts a copy on the disk under its name, whole, or not at all. */
  static Holding copy(Handle source, Path target, ProgressListener progress) throws IOException {
    Path part = WholeFile.partOf(target);
    try {
      Holding holding = copyAsOfNow(source, part, progress);
      readBack(part, holding);
      WholeFile.name(part, target);
      return holding;
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /**
   * The open transaction sees one moment; without it, a shot fired meanwhile would make the copy
   * start again.
   */
  private static Holding copyAsOfNow(Handle source, Path part, ProgressListener progress) {
    return source.inTransaction(
        moment -> {
          Holding holding = Holding.of(moment);
          int result;
          try {
            result =
                moment
                    .getConnection()
                    .unwrap(SQLiteConnection.class)
                    .getDatabase()
                    .backup(
                        "main",
                        part.toString(),
                        (remaining, pages) -> progress.reached(pages - remaining, pages),
                        0,
                        0,
                        PAGES_A_STEP);
          } catch (SQLException e) {
            throw cantBeWritten(part, e.getMessage());
          }
          if (result != 0) {
            throw cantBeWritten(part, "SQLite's code " + result);
          }
          return holding;
        });
  }

  private static StoreRefused cantBeWritten(Path part, String why) {
    return new StoreRefused(
        "%s can't be written (%s): look to its folder, and to the space there."
            .formatted(part, why));
  }

  private static void readBack(Path copy, Holding expected) {
    List<String> faults =
        Databases.jdbi(copy)
            .withHandle(
                handle -> {
                  List<String> found = new Integrity(handle).faults();
                  if (found.isEmpty() && !Holding.of(handle).equals(expected)) {
                    found = List.of("It doesn't hold what the database does.");
                  }
                  // A single file can be moved to any medium.
                  handle.execute("PRAGMA journal_mode = DELETE");
                  return found;
                });
    if (!faults.isEmpty()) {
      throw new StoreRefused(
          "The backup isn't sound and was thrown away (%s): run \"castwell verify\"."
              .formatted(faults.get(0)));
    }
  }
}
