package castwell.web;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The program left on, in a process of its own, with somebody's page open and others coming and
 * going: however many beats it hears, it holds no more memory, threads or files. A week's beats by
 *
 * <pre>mvn -pl analysis,capture,web test -Dtest=LeftOnTest \
 *   -Dsurefire.failIfNoSpecifiedTests=false -Dcastwell.beats=604800</pre>
 */
class LeftOnTest {
  private static final int BEATS = Integer.getInteger("castwell.beats", 10_000);
  private static final int BEATS_TO_WARM_UP = 5_000;
  private static final int BEATS_A_SHOT = 1_000;
  private static final int VISITORS = 20;

  /** The virtual machine's compiler and the server's pool take one more now and then. */
  private static final int THREADS_TO_SPARE = 5;

  private static final Duration PATIENCE = Duration.ofSeconds(120).plusMillis(5L * BEATS);
  private static final long MOST_GROWTH_BYTES = 1_000_000;
  private static final Pattern TOTAL = Pattern.compile("Total\\s+\\d+\\s+(\\d+)");

  @TempDir Path folder;

  private final long began = System.nanoTime();
  private int line;
  private int edges;
  private long lastTicks;

  /** What the process holds. */
  private record Held(long bytes, long threads, long files) {}

  @Test
  void holdsNoMoreAfterAnyNumberOfBeats() throws Exception {
    try (PseudoTerminal board = new PseudoTerminal();
        Program program = run(board.port())) {
      URI live = URI.create(program.line().replaceFirst(".*(http:.*)", "$1") + "api/live");
      board.read();
      say(board, "I,%d,1,sim-1,gate-1,7,2000000,2,0,0,64,P".formatted(next()));
      try (FeedReader page = FeedReader.after(live, 0)) {
        page.awaitAnswer();
        Held before = after(BEATS_TO_WARM_UP, board, page, live, program);
        Held held = after(BEATS, board, page, live, program);
        System.out.printf("%d beats: %s, before %s%n", BEATS, held, before);
        assertThat(held.bytes() - before.bytes()).isLessThan(MOST_GROWTH_BYTES);
        assertThat(held.threads()).isLessThanOrEqualTo(before.threads() + THREADS_TO_SPARE);
        assertThat(held.files()).isLessThanOrEqualTo(before.files());
      }
      program.terminate();
      assertThat(program.outcome().err()).isEmpty();
    }
  }

  private Program run(Path port) {
    return Program.lasting(
        PATIENCE, "run", "--data", folder.toString(), "--http", "0", "--port", port.toString());
  }

  private Held after(int beats, PseudoTerminal board, FeedReader page, URI live, Program program)
      throws IOException {
    for (int i = 0; i < beats; i++) {
      long ticks = ticks();
      say(board, "H,%d,7,%d,0,%d,0,0,CC,812,807,5012,,,".formatted(next(), ticks, edges));
      if (i % BEATS_A_SHOT == BEATS_A_SHOT - 1) {
        shoot(board);
        while (!page.next().kind().equals("shot")) {}
      }
    }
    List<FeedReader> visitors = new ArrayList<>();
    for (int i = 0; i < VISITORS; i++) {
      visitors.add(FeedReader.after(live, 0));
      visitors.get(i).awaitAnswer();
    }
    for (FeedReader visitor : visitors) {
      visitor.close();
    }
    shoot(board); // at which it finds that they are gone
    while (!page.next().kind().equals("shot")) {}
    return held(program.pid());
  }

  private void shoot(PseudoTerminal board) {
    long[] after = {0, 20_000, 23_622, 43_622};
    long ticks = ticks();
    for (int i = 0; i < after.length; i++) {
      say(
          board,
          "E,%d,7,%d,%c,%c,%d,0"
              .formatted(
                  next(),
                  ++edges,
                  i % 2 == 0 ? 'A' : 'B',
                  i < 2 ? 'B' : 'C',
                  ticks + after[i] & 0xFFFF_FFFFL));
    }
    lastTicks = ticks + after[3];
  }

  /** Two a microsecond, and more than the last. */
  private long ticks() {
    lastTicks = Math.max(lastTicks + 1, (System.nanoTime() - began) / 500);
    return lastTicks;
  }

  private int next() {
    int next = line;
    line = line + 1 & 0xFFFF;
    return next;
  }

  private static void say(PseudoTerminal board, String body) {
    board.write("$%s*%04X\n".formatted(body, crc(body)).getBytes(US_ASCII));
  }

  /** CRC-16/CCITT-FALSE bit by bit. */
  private static int crc(String body) {
    int crc = 0xFFFF;
    for (int i = 0; i < body.length(); i++) {
      crc ^= body.charAt(i) << 8;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 0x8000) == 0 ? crc << 1 : crc << 1 ^ 0x1021;
      }
      crc &= 0xFFFF;
    }
    return crc;
  }

  /** Bytes that are still reachable, and what the kernel counts. */
  private static Held held(long pid) throws IOException {
    Process jcmd =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "jcmd").toString(),
                String.valueOf(pid),
                "GC.class_histogram")
            .start();
    String histogram = new String(jcmd.getInputStream().readAllBytes(), US_ASCII);
    Matcher total = TOTAL.matcher(histogram);
    assertThat(total.find()).as(histogram).isTrue();
    Path process = Path.of("/proc", String.valueOf(pid));
    try (var threads = Files.list(process.resolve("task"));
        var files = Files.list(process.resolve("fd"))) {
      return new Held(Long.parseLong(total.group(1)), threads.count(), files.count());
    }
  }
}
