package castwell.capture.device;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import castwell.capture.Until;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.function.Function;

/**
 * The far end of a serial port, on a real pseudo-terminal: stands at a path that stays the same,
 * can be pulled out and plugged in again, and answers what the host writes line by line.
 */
public final class PtyPeer implements AutoCloseable {
  private final Path path;
  private final Function<String, String> answer;
  private final StringBuffer heard = new StringBuffer();
  private final StringBuilder line = new StringBuilder();
  private PseudoTerminal terminal;
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
    terminal = new PseudoTerminal();
    point(terminal.port());
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
      terminal.close();
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
   * Writes all, waiting for the host to read where it must. Lost while pulled out, as on a wire.
   */
  public synchronized void write(byte[] bytes) {
    if (plugged) {
      terminal.write(bytes);
    }
  }

  private void listen() {
    while (plugged) {
      for (byte b : terminal.readAtMost(10)) {
        take((char) (b & 0xFF));
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
  public void awaitHeard(String text) {
    Until.holds("the host to write " + text, () -> heard().contains(text));
  }

  @Override
  public void close() {
    if (plugged) {
      hangUp();
    }
  }
}
