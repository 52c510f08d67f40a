package castwell.web;

import com.sun.jna.Library;
import com.sun.jna.Native;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Arrays;

/** A pseudo-terminal of the kernel: what is written to it comes out of a serial port. */
final class PseudoTerminal implements AutoCloseable {
  private static final int O_RDWR = 2;
  private static final int O_NOCTTY = 0x100;
  private static final short POLLIN = 1;

  private final int board;
  private final int held;
  private final Path port;

  /** The calls of the C library that Java lacks. */
  interface CLibrary extends Library {
    CLibrary C = Native.load("c", CLibrary.class);

    int posix_openpt(int flags);

    int grantpt(int fd);

    int unlockpt(int fd);

    int ptsname_r(int fd, byte[] name, long size);

    int open(String path, int flags);

    int tcgetattr(int fd, byte[] termios);

    void cfmakeraw(byte[] termios);

    int tcsetattr(int fd, int when, byte[] termios);

    int poll(byte[] pollfd, long count, int timeoutMillis);

    long read(int fd, byte[] bytes, long size);

    long write(int fd, byte[] bytes, long size);

    int close(int fd);
  }

  PseudoTerminal() {
    board = checked(CLibrary.C.posix_openpt(O_RDWR | O_NOCTTY));
    checked(CLibrary.C.grantpt(board));
    checked(CLibrary.C.unlockpt(board));
    byte[] name = new byte[64];
    checked(CLibrary.C.ptsname_r(board, name, name.length));
    port = Path.of(Native.toString(name));
    // Held open, lest the board reads an error while no host has it open.
    held = checked(CLibrary.C.open(port.toString(), O_RDWR | O_NOCTTY));
    byte[] termios = new byte[256];
    checked(CLibrary.C.tcgetattr(held, termios));
    CLibrary.C.cfmakeraw(termios);
    checked(CLibrary.C.tcsetattr(held, 0, termios));
  }

  /** Where the host finds it. */
  Path port() {
    return port;
  }

  /** What the host wrote; waits for it, 20 s at most. */
  byte[] read() {
    byte[] bytes = readAtMost(20_000);
    if (bytes.length == 0) {
      throw new AssertionError("the host writes nothing");
    }
    return bytes;
  }

  /** What the host wrote; empty when that is nothing for so long. */
  byte[] readAtMost(int millis) {
    ByteBuffer poll = ByteBuffer.allocate(8).order(ByteOrder.nativeOrder());
    poll.putInt(0, board).putShort(4, POLLIN);
    if (CLibrary.C.poll(poll.array(), 1, millis) <= 0) {
      return new byte[0];
    }
    byte[] bytes = new byte[256];
    int count = checked((int) CLibrary.C.read(board, bytes, bytes.length));
    return Arrays.copyOf(bytes, count);
  }

  /** Writes as the board, waiting for the host to read where it must. */
  void write(byte[] bytes) {
    byte[] rest = bytes;
    while (rest.length > 0) {
      int written = checked((int) CLibrary.C.write(board, rest, rest.length));
      rest = Arrays.copyOfRange(rest, written, rest.length);
    }
  }

  /** Pulls the cable. */
  @Override
  public void close() {
    CLibrary.C.close(held);
    CLibrary.C.close(board);
  }

  private static int checked(int result) {
    if (result < 0) {
      throw new IllegalStateException("C library error " + Native.getLastError());
    }
    return result;
  }
}
