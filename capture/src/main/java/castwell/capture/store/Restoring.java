package castwell.capture.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Puts a backup in the place of a folder's database, which is set aside. */
public final class Restoring {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

  private Restoring() {}

  /**
   * What a restore did.
   *
   * @param setAside where the database that was there before is now
   */
  public record Restored(Holding holding, Optional<Path> setAside) {}

  /**
   * Restores a backup. At any moment the folder holds either the one database or the other, never
   * half of one.
   *
   * @throws StoreRefused when a program has the folder open, or the file is no sound database of
   *     ours
   */
  public static Restored restore(Path backup, Path folder, Instant now, ProgressListener progress)
      throws IOException {
    if (!Files.isRegularFile(backup)) {
      throw new StoreRefused("There is no file %s: name a backup.".formatted(backup));
    }
    Claim claim = Claim.on(folder);
    try {
      NativeLibrary.unpackInto(folder);
      Path file = folder.resolve(Store.FILE);
      Path next = folder.resolve(Store.FILE + ".next");
      Holding holding = copyIn(backup, next, progress);
      Optional<Path> aside =
          Files.exists(file) ? Optional.of(setAside(file, now)) : Optional.empty();
      // SQLite would take the old database's log for the new one's.
      Files.deleteIfExists(beside(file, "-wal"));
      Files.deleteIfExists(beside(file, "-shm"));
      WholeFile.syncNames(folder);
      WholeFile.name(next, file);
      return new Restored(holding, aside);
    } finally {
      claim.close();
    }
  }

  private static Holding copyIn(Path backup, Path next, ProgressListener progress)
      throws IOException {
    Databases.refuseCut(backup);
    try (Handle handle = Databases.jdbi(backup).open()) {
      int version = Schema.version(handle);
      Schema.refuseNewer(version, backup, Schema.STEPS);
      if (version == 0) {
        throw new StoreRefused(
            "%s is no backup of Castwell's: name one that it made.".formatted(backup));
      }
      return Backups.copy(handle, next, progress);
    } catch (RuntimeException e) {
      throw Databases.refused(backup, e);
    }
  }

  /** Copies a database under a dated name, with what its log still holds. */
  private static Path setAside(Path file, Instant now) throws IOException {
    try {
      Databases.jdbi(file).useHandle(handle -> handle.execute("PRAGMA wal_checkpoint(TRUNCATE)"));
    } catch (RuntimeException e) {
      // The file is too damaged for SQLite; it is copied byte by byte, so that everything that is
      // left can be saved.
    }
    Path aside = beside(file, ".set-aside-" + STAMP.format(now));
    Files.copy(file, aside);
    Path log = beside(file, "-wal");
    if (Files.exists(log) && Files.size(log) > 0) {
      Files.copy(log, beside(aside, "-wal"));
      WholeFile.syncContent(beside(aside, "-wal"));
    }
    WholeFile.syncContent(aside);
    WholeFile.syncNames(aside.getParent());
    return aside;
  }

  private static Path beside(Path file, String ending) {
    return file.resolveSibling(file.getFileName() + ending);
  }
}
