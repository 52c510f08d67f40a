package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.device.Forwarder;
import castwell.capture.publish.Mosquitto;
import castwell.capture.publish.WirePort;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.rehearsal.RehearsalSettings;
import castwell.web.Program.Outcome;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Many boards over one real broker into one daemon, a process of its own; the broker is killed once
 * and started again. A whole range, with its figures printed:
 *
 * <pre>
 * mvn test -pl analysis,capture,web -Dtest=ManyLanesTest -Dcastwell.lanes=40 -Dcastwell.seconds=90 \
 *   -Dsurefire.failIfNoSpecifiedTests=false</pre>
 */
@Timeout(300)
@Tag("broker")
class ManyLanesTest {
  private static final int LANES = Integer.getInteger("castwell.lanes", 6);
  private static final int SECONDS = Integer.getInteger("castwell.seconds", 8);
  private static final double SECONDS_BETWEEN_ARROWS = LANES / 6.0 + 0.5;
  private static final int EDGES = 4;

  @TempDir Path folder;

  private final List<TimedBoard> boards = new ArrayList<>();
  private final List<Forwarder> forwarders = new ArrayList<>();
  private final AtomicReference<Throwable> died = new AtomicReference<>();

  /** When a passage was told of as a shot that counts, by its id. */
  private final Map<String, Long> toldNanos = new ConcurrentHashMap<>();

  private static String station(int lane) {
    return "lane-" + lane;
  }

  private static String shotId(int lane, int passage) {
    return "gate-%d.1.%d".formatted(lane, EDGES * passage + 1);
  }

  private static String device(int lane) {
    return "gate-" + lane;
  }

  private Path configured(Mosquitto broker) throws IOException {
    StringBuilder settings = new StringBuilder("[mqtt]\nurl = \"" + broker.url() + "\"\n");
    for (int lane = 1; lane <= LANES; lane++) {
      settings
          .append("[[station]]\nname = \"")
          .append(station(lane))
          .append("\"\nport = \"mqtt\"\n");
    }
    Path data = Files.createDirectories(folder.resolve("data"));
    Files.writeString(data.resolve("castwell.toml"), settings);
    return data;
  }

  private void shoot(BrokerSettings broker) {
    for (int lane = 1; lane <= LANES; lane++) {
      TimedBoard board =
          new TimedBoard(
              new RehearsalSettings(
                  lane, device(lane), 1, SECONDS_BETWEEN_ARROWS, SECONDS_BETWEEN_ARROWS, 0.006, 0));
      Forwarder forwarder =
          new Forwarder(
              board,
              WirePort.ofForwarder(broker, station(lane)),
              () -> System.nanoTime() / 1_000,
              sentence -> {},
              died::set);
      boards.add(board);
      forwarders.add(forwarder);
      forwarder.start();
    }
  }

  /** How many passages each board has said whole by now. */
  private List<Integer> passages() {
    return boards.stream().map(board -> board.saidNanos().size() / EDGES).toList();
  }

  private List<String> shotIds(List<Integer> passages) {
    return IntStream.rangeClosed(1, LANES)
        .boxed()
        .flatMap(lane -> shotIds(lane, passages.get(lane - 1)).stream())
        .toList();
  }

  /** Of a lane's first so many passages. */
  private static List<String> shotIds(int lane, int passages) {
    return IntStream.range(0, passages).mapToObj(i -> shotId(lane, i)).toList();
  }

  @Test
  void everyPassageIsOnceInTheStoreWithItsOwnStation() throws Exception {
    try (Mosquitto broker = Mosquitto.start(folder.resolve("broker"));
        Program daemon =
            Program.lasting(
                Until.PATIENCE.multipliedBy(3).plusSeconds(SECONDS),
                "run",
                "--data",
                configured(broker).toString(),
                "--http",
                "0")) {
      URI address = URI.create(daemon.line().replaceFirst(".* (http\\S+)$", "$1"));
      Thread listener = listen(address.resolve("/api/live"));
      shoot(settings(broker));
      awaitTold(Collections.nCopies(LANES, 1));
      Usage before = Usage.of(daemon.pid());
      long began = System.nanoTime();
      letPass(SECONDS);
      List<Integer> undisturbed = passages();
      awaitTold(undisturbed);
      report(Usage.of(daemon.pid()), before, began, undisturbed);
      broker.kill();
      letPass(2);
      broker.start();
      awaitTold(passages());
      forwarders.forEach(forwarder -> new Thread(forwarder::close).start());
      daemon.terminate();
      assertThat(daemon.outcome().exitCode()).isZero();
      listener.join();
    }
    assertThat(died.get()).isNull();
    check(rows());
  }

  private static BrokerSettings settings(Mosquitto broker) {
    return new BrokerSettings(
        broker.url().toString(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private void letPass(int seconds) {
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    Until.holds("the time", () -> System.nanoTime() > until);
  }

  private void awaitTold(List<Integer> passages) {
    List<String> wanted = shotIds(passages);
    Until.holds(wanted.size() + " shots", () -> toldNanos.keySet().containsAll(wanted));
  }

  private Thread listen(URI live) throws IOException {
    FeedReader feed = FeedReader.after(live, 0);
    feed.awaitAnswer();
    Thread listener =
        new Thread(
            () -> {
              try (feed) {
                while (true) {
                  FeedReader.Event event = feed.next();
                  if (event.kind().equals("shot") && event.data().path("counts").asBoolean()) {
                    toldNanos.putIfAbsent(event.data().path("shot_id").asText(), System.nanoTime());
                  }
                }
              } catch (IOException e) {
                // the daemon has ended
              }
            });
    listener.start();
    return listener;
  }

  private void report(Usage now, Usage before, long began, List<Integer> passages) {
    double seconds = (System.nanoTime() - began) / 1e9;
    double[] millis =
        IntStream.rangeClosed(1, LANES)
            .boxed()
            .flatMapToDouble(
                lane ->
                    IntStream.range(0, passages.get(lane - 1))
                        .filter(i -> saidNanos(lane, i) > began)
                        .mapToDouble(i -> delayNanos(lane, i) / 1e6))
            .sorted()
            .toArray();
    System.out.printf(
        "ManyLanesTest: %d lanes, %d shots in %.0f s; last byte to being told p50 %.0f ms, p99 %.0f ms, most %.0f ms; %d threads, %d MB resident, heap %d MB in use after collection, CPU %.0f %% of one core%n",
        LANES,
        millis.length,
        seconds,
        millis[millis.length / 2],
        millis[(int) (millis.length * 0.99)],
        millis[millis.length - 1],
        now.threads(),
        now.residentMegabytes(),
        now.heapMegabytes(),
        100 * (now.cpuSeconds() - before.cpuSeconds()) / seconds);
    // A reader and a publisher a station, and what the client library takes for the two's
    // connections.
    assertThat(now.threads()).isLessThan(60 + 12 * LANES);
    assertThat(now.heapMegabytes()).isLessThan(128);
  }

  private long delayNanos(int lane, int passage) {
    return toldNanos.get(shotId(lane, passage)) - saidNanos(lane, passage);
  }

  /** When the board said the passage's last edge. */
  private long saidNanos(int lane, int passage) {
    return boards.get(lane - 1).saidNanos().get(EDGES * (passage + 1));
  }

  private List<CSVRecord> rows() throws IOException {
    Outcome exported = Program.run("export", "--data", folder.resolve("data").toString());
    CSVFormat headed = CSVFormat.RFC4180.builder().setHeader().get();
    try (CSVParser parser = CSVParser.parse(exported.out(), headed)) {
      return parser.getRecords();
    }
  }

  /** What came last may have been under way as the end came; everything before is there, once. */
  private void check(List<CSVRecord> rows) {
    assertThat(rows).extracting(row -> row.get("shot_id")).doesNotHaveDuplicates();
    Map<String, List<CSVRecord>> stations =
        rows.stream().collect(Collectors.groupingBy(row -> row.get("station")));
    assertThat(stations).hasSize(LANES);
    for (int lane = 1; lane <= LANES; lane++) {
      List<CSVRecord> own = stations.get(station(lane));
      assertThat(own).extracting(row -> row.get("device")).containsOnly(device(lane));
      assertThat(own).extracting(row -> row.get("session")).containsOnly(own.get(0).get("session"));
      int whole = own.size() - 1;
      assertThat(own)
          .filteredOn(row -> Integer.parseInt(row.get("first_edge")) <= EDGES * whole)
          .allMatch(row -> row.get("counts").equals("true"));
      assertThat(own)
          .extracting(row -> row.get("shot_id"))
          .containsExactlyInAnyOrderElementsOf(shotIds(lane, own.size()));
    }
    assertThat(rows).extracting(row -> row.get("shot_id")).containsAll(toldNanos.keySet());
  }

  /** What a process takes, by proc(5) and the JDK's jcmd. */
  private record Usage(int threads, long residentMegabytes, long heapMegabytes, double cpuSeconds) {
    private static final int CLOCK_TICKS_PER_SECOND = 100;

    static Usage of(long pid) throws IOException, InterruptedException {
      Map<String, String> status =
          Files.readAllLines(Path.of("/proc/" + pid + "/status")).stream()
              .map(line -> line.split(":\\s*", 2))
              .collect(Collectors.toMap(words -> words[0], words -> words[1]));
      String stat = Files.readString(Path.of("/proc/" + pid + "/stat"));
      String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
      double cpu =
          (Long.parseLong(fields[11]) + Long.parseLong(fields[12]))
              / (double) CLOCK_TICKS_PER_SECOND;
      jcmd(pid, "GC.run");
      String heap = jcmd(pid, "GC.heap_info");
      long used =
          Arrays.stream(heap.split("\n"))
              .filter(line -> line.matches(".*(generation).*used \\d+K.*"))
              .mapToLong(line -> Long.parseLong(line.replaceFirst(".*used (\\d+)K.*", "$1")))
              .sum();
      return new Usage(
          Integer.parseInt(status.get("Threads")),
          Long.parseLong(status.get("VmRSS").replace(" kB", "")) / 1024,
          used / 1024,
          cpu);
    }

    private static String jcmd(long pid, String command) throws IOException, InterruptedException {
      Process process =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "jcmd").toString(),
                  String.valueOf(pid),
                  command)
              .redirectErrorStream(true)
              .start();
      String said = new String(process.getInputStream().readAllBytes());
      assertThat(process.waitFor()).as(said).isZero();
      return said;
    }
  }
}
