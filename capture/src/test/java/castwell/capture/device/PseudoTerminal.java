package castwell.capture.device;

import castwell.capture.Until;
import com.sun.jna.Native;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Arrays;

/** A pseudo-terminal of the kernel: what is written to it comes out of a serial port. */
public final class PseudoTerminal implements AutoCloseable {
  private static final int O_RDWR = 2;
  private static final int O_NOCTTY = 0400;
  private static final int O_NONBLOCK = 04000;
  private static final short POLLIN = 1;
  private static final short POLLOUT = 4;

  private final int board;
  private final int held;
  private final Path port;

  public PseudoTerminal() {
    board = checked(CLibrary.C.posix_openpt(O_RDWR | O_NOCTTY | O_NONBLOCK));
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
  public Path port() {
    return port;
  }

  /** What the host wrote; waits for it. */
  public byte[] read() {
    byte[] bytes = readAtMost((int) Until.PATIENCE.toMillis());
    if (bytes.length == 0) {
      throw new AssertionError("the host writes nothing");
    }
    return bytes;
  }

  /** What the host wrote; empty when that is nothing for so long. */
  public byte[] readAtMost(int millis) {
    if (!isReady(POLLIN, millis)) {
      return new byte[0];
    }
    byte[] bytes = new byte[4096];
    int count = checked((int) CLibrary.C.read(board, bytes, bytes.length));
    return Arrays.copyOf(bytes, count);
  }

  /** Writes as the board, waiting for the host to read where it must. */
  public void write(byte[] bytes) {
    byte[] rest = bytes;
    while (rest.length > 0) {
      if (!isReady(POLLOUT, (int) Until.PATIENCE.toMillis())) {
        throw new IllegalStateException("the host doesn't read");
      }
      int written = checked((int) CLibrary.C.write(board, rest, rest.length));
      rest = Arrays.copyOfRange(rest, written, rest.length);
    }
  }

  private boolean isReady(short event, int millis) {
    ByteBuffer poll = ByteBuffer.allocate(8).order(ByteOrder.nativeOrder());
    poll.putInt(0, board).putShort(4, event);
    return CLibrary.C.poll(poll.array(), 1, millis) > 0;
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
