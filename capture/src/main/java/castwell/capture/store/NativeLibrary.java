package castwell.capture.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * Unpacks SQLite's native part once into the data folder. Left to itself, SQLite's driver unpacks
 * it anew at each start, into a folder that every user of the machine may write to, and leaves it
 * there when the process is killed.
 */
final class NativeLibrary {
  private static final String PATH = "org.sqlite.lib.path";
  private static final String NAME = "org.sqlite.lib.name";

  private NativeLibrary() {}

  /**
   * Unpacks the library; this has to be called before SQLite is used. Where nothing may be written,
   * the driver does as it does by itself.
   */
  static synchronized void unpackInto(Path folder) {
    if (System.getProperty(PATH) != null) {
      return; // A process loads the library only once.
    }
    try {
      Path natives = Files.createDirectories(folder.resolve("native")).toAbsolutePath();
      String name = "sqlite-" + SQLiteJDBCLoader.getVersion() + "-" + libraryName();
      unpack(natives.resolve(name));
      System.setProperty(NAME, name);
      System.setProperty(PATH, natives.toString());
    } catch (IOException e) {
      // Whoever has to write to the folder will say what is wrong with it.
    }
  }

  private static String libraryName() {
    return LibraryLoaderUtil.getNativeLibName();
  }

  private static void unpack(Path library) throws IOException {
    byte[] bytes = bytes();
    if (Files.exists(library) && Arrays.equals(Files.readAllBytes(library), bytes)) {
      return;
    }
    Path part = Files.createTempFile(library.getParent(), ".sqlite", ".part");
    try {
      Files.write(part, bytes);
      Files.move(part, library, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private static byte[] bytes() throws IOException {
    String resource = LibraryLoaderUtil.getNativeLibResourcePath() + "/" + libraryName();
    try (InputStream in = SQLiteJDBCLoader.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IOException("SQLite has no native part for this machine");
      }
      return in.readAllBytes();
    }
  }
}
