package castwell.web;

import castwell.capture.device.Link;
import castwell.capture.device.PortUnavailable;
import castwell.capture.device.PseudoTerminal;
import castwell.capture.rehearsal.RehearsalPort;
import castwell.capture.rehearsal.RehearsalSettings;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * A pretended board behind a pseudo-terminal of the kernel, which shoots whether or not anybody
 * listens, and answers what it is asked.
 */
final class ShootingBoard implements AutoCloseable {
  private static final Pattern EDGE = Pattern.compile("\\$E,\\d+,\\d+,(\\d+),");
  private static final int EDGES_OF_A_SHOT = 4;

  private final RehearsalSettings settings;
  private final PseudoTerminal terminal = new PseudoTerminal();
  private final Link board;
  private final AtomicInteger highestEdge = new AtomicInteger();
  private volatile boolean open = true;

  /** Counted down by whoever asks the board something. */
  private volatile CountDownLatch asked = new CountDownLatch(0);

  ShootingBoard(RehearsalSettings settings) {
    this.settings = settings;
    try {
      board = new RehearsalPort(settings, () -> System.nanoTime() / 1_000, Optional::empty).open();
    } catch (PortUnavailable e) {
      throw new IllegalStateException(e);
    }
    thread("board-says", this::say);
    thread("board-hears", this::hear);
  }

  private static void thread(String name, Runnable work) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }

  /** Says and shoots no more until somebody asks it something. */
  void holdUntilAsked() {
    asked = new CountDownLatch(1);
  }

  private void say() {
    byte[] buffer = new byte[4096];
    StringBuilder said = new StringBuilder();
    for (int n = board.read(buffer); n >= 0 && open; n = read(buffer)) {
      for (int i = 0; i < n; i++) {
        said.append((char) buffer[i]);
        if (buffer[i] == '\n') {
          count(said);
          said.setLength(0);
        }
      }
      terminal.write(Arrays.copyOf(buffer, n));
    }
  }

  private int read(byte[] buffer) {
    try {
      asked.await();
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
    return board.read(buffer);
  }

  private void count(CharSequence line) {
    Matcher edge = EDGE.matcher(line);
    if (edge.find()) {
      highestEdge.accumulateAndGet(Integer.parseInt(edge.group(1)), Math::max);
    }
  }

  private void hear() {
    try {
      while (open) {
        byte[] heard = terminal.readAtMost(200);
        if (heard.length > 0) {
          asked.countDown();
          board.write(heard);
        }
      }
    } catch (IOException | IllegalStateException e) {
      if (open) {
        throw new AssertionError(e);
      }
    }
  }

  Path port() {
    return terminal.port();
  }

  /** Of every passage that is complete, the name that it must have. */
  List<String> shots() {
    return IntStream.range(0, highestEdge.get() / EDGES_OF_A_SHOT)
        .mapToObj(
            shot ->
                "%s.%d.%d"
                    .formatted(settings.device(), settings.boot(), EDGES_OF_A_SHOT * shot + 1))
        .toList();
  }

  @Override
  public void close() {
    open = false;
    asked.countDown();
    board.close();
    terminal.close();
  }
}
