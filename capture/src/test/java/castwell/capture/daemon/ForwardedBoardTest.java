package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import castwell.capture.English;
import castwell.capture.Until;
import castwell.capture.device.Forwarder;
import castwell.capture.device.PortSpec;
import castwell.capture.device.SerialPorts;
import castwell.capture.publish.Mosquitto;
import castwell.capture.publish.WirePort;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.recording.RecordedLine;
import castwell.capture.recording.Recording;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Figure;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.LongSupplier;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A board on a pseudo-terminal, its sentences forwarded over the real broker to the capture that
 * listens there. Truth: the recordings' own.
 */
@Tag("broker")
@Timeout(300)
class ForwardedBoardTest {
  /** The way over the broker then seems this many times as long, and as unsteady, as it is. */
  private static final int TIMES = 100;

  private static final String STATION = "lane-1";

  @TempDir Path folder;

  private final List<String> told = new CopyOnWriteArrayList<>();
  private final AtomicReference<Throwable> died = new AtomicReference<>();

  private static Path file(String name) throws Exception {
    return Path.of(ForwardedBoardTest.class.getResource("/recordings/" + name).toURI());
  }

  private static List<RecordedLine> lines(Path file) throws Exception {
    List<RecordedLine> lines = new ArrayList<>();
    try (Recording recording = Recording.open(file)) {
      for (var line = recording.next(); line.isPresent(); line = recording.next()) {
        lines.add(line.get());
      }
    }
    return lines;
  }

  private Capture capture(
      RangeBench bench, CaptureSettings settings, BrokerSettings broker, LongSupplier micros) {
    return new Capture(
        Map.of(STATION, WirePort.ofListener(broker, STATION)),
        bench.store(),
        settings,
        bench.commands(),
        bench.announcer(),
        bench.clock(),
        micros);
  }

  private Forwarder forwarder(AnsweringPeer board, BrokerSettings broker, LongSupplier micros) {
    return new Forwarder(
        new SerialPorts(micros).reserve(new PortSpec.ByPath(board.path().toString())),
        WirePort.ofForwarder(broker, STATION),
        micros,
        phrase -> told.add(English.say(phrase)),
        died::set);
  }

  private static BrokerSettings at(Mosquitto mosquitto) {
    return new BrokerSettings(
        mosquitto.url().toString(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** Heartbeats come later, and now and then much later: the board's rate is still learnt. */
  @Test
  void aForwardedBoardShootsAtTheSameSpeedsAsOneListenedToDirectly() throws Exception {
    Path recorded = file("resonator-clock.rec");
    FastClock clock = new FastClock(HandFedStation.STARTED, TIMES);
    try (Mosquitto mosquitto = Mosquitto.start(folder.resolve("broker"));
        RangeBench bench = RangeBench.in(folder.resolve("data"), clock);
        RangeBench direct = RangeBench.in(folder.resolve("direct"));
        AnsweringPeer board = new AnsweringPeer(folder.resolve("board"))) {
      direct.replay(recorded);
      bench.commands().calibrate(STATION, Instant.EPOCH, RangeBench.GATES, "test");
      try (Capture capture = capture(bench, RangeBench.SETTINGS, at(mosquitto), clock::micros);
          Forwarder forwarder = forwarder(board, at(mosquitto), clock::micros)) {
        capture.start(died::set);
        forwarder.start();
        board.pty().awaitHeard("?");
        long began = clock.micros();
        for (RecordedLine line : lines(recorded)) {
          clock.await(began + line.micros());
          board.say(line.bytes());
        }
        awaitEdges(bench, 80);
      }
      assertThat(died.get()).isNull();
      TruthCheck.check(
          bench.shots(STATION), Truth.read(file("resonator-clock.truth.csv")), 0.05e-2);
      checkSame(bench.shots(STATION), direct.shots("resonator-clock"));
    }
  }

  /**
   * The same ticks: speeds differ by what is known of the board's rate, and hardly by anything
   * else, since the rate at which edges are read weighs stories a little.
   */
  private static void checkSame(List<Shot> forwarded, List<Shot> direct) {
    assertThat(forwarded).hasSameSizeAs(direct);
    for (int i = 0; i < direct.size(); i++) {
      Figure one = forwarded.get(i).figure();
      Figure other = direct.get(i).figure();
      assertThat(forwarded.get(i).shotId()).isEqualTo(direct.get(i).shotId());
      assertThat(one.verdict()).isEqualTo(other.verdict());
      assertThat(one.speedMps().orElseThrow() / one.conditions().hz())
          .isCloseTo(
              other.speedMps().orElseThrow() / other.conditions().hz(), withPercentage(1e-5));
      // a hundred times the unsteadiness of the way
      assertThat(one.conditions().hz()).isCloseTo(other.conditions().hz(), withPercentage(0.05));
    }
  }

  private static void awaitEdges(RangeBench bench, int count) {
    Until.holds(
        count + " edges to be stored",
        () -> bench.tables().query("SELECT count(*) FROM edge").equals(List.of("" + count)));
  }

  /** As the board comes to a line of the recording. */
  private static void trouble(Mosquitto mosquitto, int line) {
    switch (line) {
      case 60 -> mosquitto.kill();
      case 160 -> mosquitto.start();
      case 330 -> mosquitto.freeze();
      case 360 -> mosquitto.thaw();
      default -> {}
    }
  }

  /** What the board says meanwhile is dropped on the way, and asked for again. */
  @Test
  void nothingThatTheBoardKeepsIsLostThoughTheBrokerIsKilledOrHangs() throws Exception {
    Path recorded = file("resonator-clock.rec");
    LongSupplier micros = () -> System.nanoTime() / 1000;
    try (Mosquitto mosquitto = Mosquitto.start(folder.resolve("broker"));
        RangeBench bench = RangeBench.in(folder.resolve("data"), Clock.systemUTC());
        AnsweringPeer board = new AnsweringPeer(folder.resolve("board"))) {
      bench.commands().calibrate(STATION, Instant.EPOCH, RangeBench.GATES, "test");
      try (Capture capture = capture(bench, RangeBench.SETTINGS, at(mosquitto), micros);
          Forwarder forwarder = forwarder(board, at(mosquitto), micros)) {
        capture.start(died::set);
        forwarder.start();
        board.pty().awaitHeard("?");
        Set<String> said = new TreeSet<>();
        List<RecordedLine> lines = lines(recorded);
        for (int i = 0; i < lines.size(); i++) {
          trouble(mosquitto, i);
          if (i == 170) {
            awaitEdges(bench, said.size()); // else the board would have forgotten some
          }
          AnsweringPeer.edgeName(lines.get(i).bytes()).ifPresent(said::add);
          board.say(lines.get(i).bytes());
        }
        awaitEdges(bench, said.size());
      }
      assertThat(died.get()).isNull();
      assertThat(bench.shots(STATION))
          .extracting(shot -> shot.byGates().orElseThrow().firstEdge())
          .containsExactlyInAnyOrderElementsOf(
              Truth.read(file("resonator-clock.truth.csv")).stream()
                  .map(Truth::firstEdge)
                  .toList());
      assertThat(told)
          .anyMatch(sentence -> sentence.endsWith("What the board says meanwhile is dropped."))
          .anyMatch(sentence -> sentence.matches("Passing on .*\\. \\d+ bytes were dropped; .*"));
    }
  }
}
