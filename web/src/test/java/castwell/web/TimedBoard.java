package castwell.web;

import castwell.capture.device.Link;
import castwell.capture.device.Port;
import castwell.capture.device.PortUnavailable;
import castwell.capture.rehearsal.RehearsalPort;
import castwell.capture.rehearsal.RehearsalSettings;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A pretended board, of which it is noted when each of its edges was first said. */
final class TimedBoard implements Port {
  private static final Pattern EDGE = Pattern.compile("\\$E,\\d+,\\d+,(\\d+),.*");

  private final RehearsalPort board;
  private final Map<Integer, Long> saidNanos = new ConcurrentHashMap<>();

  TimedBoard(RehearsalSettings settings) {
    board = new RehearsalPort(settings, () -> System.nanoTime() / 1_000, Optional::empty);
  }

  /** By the edge's number. */
  Map<Integer, Long> saidNanos() {
    return saidNanos;
  }

  @Override
  public String name() {
    return "pretended board";
  }

  @Override
  public Link open() throws PortUnavailable {
    Link link = board.open();
    StringBuilder line = new StringBuilder();
    return new Link() {
      @Override
      public int read(byte[] buffer) {
        int count = link.read(buffer);
        for (int i = 0; i < count; i++) {
          line.append((char) buffer[i]);
          if (buffer[i] == '\n') {
            note(line.toString().strip());
            line.setLength(0);
          }
        }
        return count;
      }

      @Override
      public void write(byte[] bytes) throws IOException {
        link.write(bytes);
      }

      @Override
      public void close() {
        link.close();
      }
    };
  }

  private void note(String line) {
    Matcher edge = EDGE.matcher(line);
    if (edge.matches()) {
      saidNanos.putIfAbsent(Integer.parseInt(edge.group(1)), System.nanoTime());
    }
  }
}
