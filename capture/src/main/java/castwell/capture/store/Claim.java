package castwell.capture.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/** A claim on a data folder: while it is held, no other program may write there. */
final class Claim implements AutoCloseable {
  private static final String LOCK = "castwell.lock";

  private final FileChannel channel;

  private Claim(FileChannel channel) {
    this.channel = channel;
  }

  /**
   * Claims the folder, making it first where there is none.
   *
   * @throws StoreRefused when it can't be had
   */
  static Claim on(Path folder) {
    makeFolder(folder);
    return lock(folder);
  }

  private static void makeFolder(Path folder) {
    try {
      Files.createDirectories(folder);
      Path probe = Files.createTempFile(folder, ".castwell", null);
      Files.delete(probe);
    } catch (IOException e) {
      throw new StoreRefused(
          "The data folder %s can't be written to%s: free space or give yourself the right to, or name another with --data."
              .formatted(folder, reason(e)),
          e);
    }
  }

  private static String reason(IOException e) {
    return e instanceof FileSystemException told && told.getReason() != null
        ? " (" + told.getReason() + ")"
        : "";
  }

  private static Claim lock(Path folder) {
    try {
      FileChannel channel =
          FileChannel.open(
              folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (tryLock(channel).isEmpty()) {
        channel.close();
        throw new StoreRefused(
            "Another Castwell is writing to %s: stop it, or name another folder with --data."
                .formatted(folder));
      }
      return new Claim(channel);
    } catch (IOException e) {
      throw new StoreRefused(
          "The data folder %s can't be locked (%s): name another with --data."
              .formatted(folder, e.getMessage()),
          e);
    }
  }

  /** Whether a program is writing there now. */
  static boolean isHeld(Path folder) {
    Path lock = folder.resolve(LOCK);
    if (!Files.exists(lock)) {
      return false;
    }
    try (FileChannel channel = FileChannel.open(lock, StandardOpenOption.WRITE)) {
      return tryLock(channel).isEmpty();
    } catch (IOException e) {
      return false;
    }
  }

  private static Optional<FileLock> tryLock(FileChannel channel) throws IOException {
    try {
      return Optional.ofNullable(channel.tryLock());
    } catch (OverlappingFileLockException e) {
      return Optional.empty();
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      // The operating system drops the lock when the process ends.
    }
  }
}
