package castwell.capture.device;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import com.sun.jna.Native;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.Arrays;
import java.util.function.Function;

/**
 * The far end of a serial port, on a real pseudo-terminal: stands at a path that stays the same,
 * can be pulled out and plugged in again, and answers what the host writes line by line.
 */
public final class PtyPeer implements AutoCloseable {
  private static final int O_RDWR = 2;
  private static final int O_NOCTTY = 0400;
  private static final int O_NONBLOCK = 04000;
  private static final short POLLIN = 1;
  private static final short POLLOUT = 4;

  private final Path path;
  private final Function<String, String> answer;
  private final StringBuffer heard = new StringBuffer();
  private final StringBuilder line = new StringBuilder();
  private int master;
  private int slave;
  private Thread listener;
  private volatile boolean plugged;

  private PtyPeer(Path path, Function<String, String> answer) {
    this.path = path;
    this.answer = answer;
    plugIn();
  }

  /** A peer that only speaks when told to. */
  public static PtyPeer at(Path path) {
    return new PtyPeer(path, line -> "");
  }

  /**
   * @param answer what to write back for a line the host wrote; its line end is cut off
   */
  public static PtyPeer at(Path path, Function<String, String> answer) {
    return new PtyPeer(path, answer);
  }

  /** Where the host finds it: a link, absent while it is pulled out. */
  public Path path() {
    return path;
  }

  /** Comes back at the same path, on another pseudo-terminal. */
  public synchronized void plugIn() {
    master = checked(CLibrary.C.posix_openpt(O_RDWR | O_NOCTTY | O_NONBLOCK));
    checked(CLibrary.C.grantpt(master));
    checked(CLibrary.C.unlockpt(master));
    byte[] name = new byte[64];
    checked(CLibrary.C.ptsname_r(master, name, name.length));
    String device = Native.toString(name);
    // Held open, lest the master reads an error whenever no host has it open.
    slave = checked(CLibrary.C.open(device, O_RDWR | O_NOCTTY));
    byte[] termios = new byte[256];
    checked(CLibrary.C.tcgetattr(slave, termios));
    CLibrary.C.cfmakeraw(termios);
    checked(CLibrary.C.tcsetattr(slave, 0, termios));
    point(Path.of(device));
    plugged = true;
    line.setLength(0);
    listener = new Thread(this::listen, "pty peer " + path.getFileName());
    listener.setDaemon(true);
    listener.start();
  }

  private void point(Path device) {
    try {
      Path fresh = path.resolveSibling(path.getFileName() + ".new");
      Files.deleteIfExists(fresh);
      Files.createSymbolicLink(fresh, device);
      Files.move(fresh, path, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Pulls the cable; what was written and not read yet is lost. */
  public void hangUp() {
    plugged = false;
    join();
    synchronized (this) {
      try {
        Files.deleteIfExists(path);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      CLibrary.C.close(master);
      CLibrary.C.close(slave);
    }
  }

  private void join() {
    try {
      listener.join();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  public void write(String text) {
    write(text.getBytes(ISO_8859_1));
  }

  /**
   * Writes all, waiting for the host to read where it must, 5 s at most. Lost while pulled out, as
   * on a wire.
   */
  public synchronized void write(byte[] bytes) {
    byte[] rest = bytes;
    while (plugged && rest.length > 0) {
      if (!isReady(POLLOUT, 5000)) {
        throw new IllegalStateException("the host doesn't read");
      }
      int written = checked((int) CLibrary.C.write(master, rest, rest.length));
      rest = Arrays.copyOfRange(rest, written, rest.length);
    }
  }

  private boolean isReady(short event, int timeoutMillis) {
    ByteBuffer poll = ByteBuffer.allocate(8).order(ByteOrder.nativeOrder());
    poll.putInt(0, master).putShort(4, event);
    return CLibrary.C.poll(poll.array(), 1, timeoutMillis) > 0;
  }

  private void listen() {
    byte[] bytes = new byte[4096];
    while (plugged) {
      if (isReady(POLLIN, 10)) {
        int count = (int) CLibrary.C.read(master, bytes, bytes.length);
        for (int i = 0; i < count; i++) {
          take((char) (bytes[i] & 0xFF));
        }
      }
    }
  }

  private void take(char c) {
    heard.append(c);
    if (c != '\n') {
      line.append(c);
      return;
    }
    String reply = answer.apply(line.toString());
    line.setLength(0);
    if (!reply.isEmpty()) {
      write(reply);
    }
  }

  /** All that the host ever wrote. */
  public String heard() {
    return heard.toString();
  }

  /** Waits until the host has written this. */
  public void awaitHeard(String text, Duration atMost) {
    Wait.until("the host to write " + text, atMost, () -> heard().contains(text));
  }

  @Override
  public void close() {
    if (plugged) {
      hangUp();
    }
  }

  private static int checked(int result) {
    if (result < 0) {
      throw new IllegalStateException("C library error " + Native.getLastError());
    }
    return result;
  }
}
