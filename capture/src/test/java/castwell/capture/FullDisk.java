package castwell.capture;

import com.sun.jna.Library;
import com.sun.jna.Native;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A disk that takes nothing: the kernel lets no file of this process grow, by setrlimit(2),
 * RLIMIT_FSIZE. The writer gets EFBIG, as it gets ENOSPC from a full one; it needs no right to
 * mount.
 */
public final class FullDisk {
  private static final int RLIMIT_FSIZE = 1;

  private FullDisk() {}

  /** Two calls of the C library. */
  interface Limits extends Library {
    Limits C = Native.load("c", Limits.class);

    int getrlimit(int resource, byte[] limit);

    int setrlimit(int resource, byte[] limit);
  }

  /** Fills a real disk up, a small one for choice, and does something meanwhile. */
  public static void during(Path disk, Runnable work) {
    Path filler = disk.resolve("filler");
    try {
      fill(filler);
      try {
        work.run();
      } finally {
        Files.delete(filler);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void fill(Path filler) throws IOException {
    try (OutputStream out = Files.newOutputStream(filler)) {
      while (true) {
        out.write(new byte[4096]);
      }
    } catch (IOException full) {
      if (Files.size(filler) == 0) {
        throw full;
      }
    }
  }

  /** Does something meanwhile. */
  public static void during(Runnable work) {
    byte[] before = new byte[16];
    check(Limits.C.getrlimit(RLIMIT_FSIZE, before));
    ByteBuffer none = ByteBuffer.wrap(before.clone()).order(ByteOrder.nativeOrder());
    none.putLong(0, 0); // the soft limit, which may be raised again
    check(Limits.C.setrlimit(RLIMIT_FSIZE, none.array()));
    try {
      work.run();
    } finally {
      check(Limits.C.setrlimit(RLIMIT_FSIZE, before));
    }
  }

  private static void check(int result) {
    if (result != 0) {
      throw new IllegalStateException("C library error " + Native.getLastError());
    }
  }
}
