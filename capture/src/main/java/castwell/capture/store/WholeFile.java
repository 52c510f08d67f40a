package castwell.capture.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Writes a file so that it is on the disk under its name, whole, or not at all, even when the power
 * fails.
 */
public final class WholeFile {
  private WholeFile() {}

  /**
   * Where to write the file before it gets its name; anything that an earlier try left there is
   * removed.
   */
  public static Path partOf(Path target) throws IOException {
    Path part = target.resolveSibling(target.getFileName() + ".part");
    Files.deleteIfExists(part);
    return part;
  }

  /** Gives a part its name, replacing a file of that name. */
  public static void name(Path part, Path target) throws IOException {
    syncContent(part);
    Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    syncNames(target.toAbsolutePath().getParent());
  }

  static void syncContent(Path file) throws IOException {
    sync(file, StandardOpenOption.WRITE);
  }

  /** Puts the folder's list of file names on the disk. */
  static void syncNames(Path folder) throws IOException {
    sync(folder, StandardOpenOption.READ);
  }

  private static void sync(Path path, StandardOpenOption mode) throws IOException {
    try (FileChannel channel = FileChannel.open(path, mode)) {
      channel.force(true);
    }
  }
}
