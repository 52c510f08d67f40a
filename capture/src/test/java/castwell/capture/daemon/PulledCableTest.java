package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.capture.Until;
import castwell.capture.device.Port;
import castwell.capture.device.PortSpec;
import castwell.capture.device.SerialPorts;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.station.LinkState;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.LongSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two boards at once, on the kernel's own pseudo-terminals through the serial library, each with
 * its cable pulled 50 times. Truth: the recording's own, and what the generator sent.
 */
@Tag("slow")
@Timeout(300)
class PulledCableTest {
  private static final int PULLS = 50;
  private static final LongSupplier MICROS = () -> System.nanoTime() / 1000;

  /** The boards talk a hundred times faster than they would, which must not pass for their rate. */
  private static final CaptureSettings SETTINGS =
      new CaptureSettings(
          RangeBench.SETTINGS.timing(),
          RangeBench.SETTINGS.limits(),
          RangeBench.GATES,
          RangeBench.SETTINGS.air(),
          1,
          RangeBench.SETTINGS.zone());

  private static final double OTHER_SPACING_M = 0.6;

  @TempDir Path folder;

  private static Calibration gates(double spacingM) {
    return new Calibration(spacingM, 0.0003, 0.001, 2.0, Oscillator.CRYSTAL);
  }

  /** A crystal's, and none whose lost lines would leave in doubt whose edge it was. */
  private static DisturbedRange disturbed() {
    return Stream.iterate(1L, seed -> seed + 1)
        .map(DisturbedRange::of)
        .filter(DisturbedRange::isCrystal)
        .filter(range -> range.truths().size() > 20)
        .filter(range -> range.truths().stream().noneMatch(t -> t.why().matches(".*(LOST|CORR).*")))
        .filter(range -> range.truths().stream().map(Truth::boot).distinct().count() > 1)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void everyEdgeIsTakenOnceAndNothingIsMissed() throws Exception {
    long seed = Seed.of(PulledCableTest.class);
    Path recorded = Path.of(getClass().getResource("/recordings/every-trouble-once.rec").toURI());
    DisturbedRange disturbed = disturbed();
    AtomicReference<Throwable> died = new AtomicReference<>();
    try (RangeBench bench = RangeBench.in(folder.resolve("data"));
        AnsweringPeer one = new AnsweringPeer(folder.resolve("one"));
        AnsweringPeer two = new AnsweringPeer(folder.resolve("two"))) {
      bench.commands().calibrate("lane-1", Instant.EPOCH, gates(Flight.SPACING_M), "test");
      bench.commands().calibrate("lane-2", Instant.EPOCH, gates(OTHER_SPACING_M), "test");
      try (Capture capture = capture(bench, one, two)) {
        capture.start(died::set);
        var first = play(new PulledCable(one, recorded, "gate-1", bench.tables(), seed));
        Path file = disturbed.writeTo(folder);
        var second = play(new PulledCable(two, file, disturbed.device(), bench.tables(), seed + 1));
        CompletableFuture.allOf(first, second)
            .get(2 * Until.PATIENCE.toSeconds(), TimeUnit.SECONDS);
        // The board that is through its lines first may be silent for 3 s by now.
        assertThat(capture.links())
            .extracting(LinkState::state)
            .isSubsetOf(LinkState.State.ONLINE, LinkState.State.OFFLINE);
      }
      assertThat(died.get()).isNull();
      TruthCheck.check(bench.shots("lane-1"), truths(recorded), 1e-4);
      TruthCheck.check(
          bench.shots("lane-2"), scaled(disturbed.truths()), disturbed.speedTolerance());
      checkAgainstReplay(bench.shots("lane-1"), recorded);
      checkAgainstReplay(bench.shots("lane-2"), folder.resolve(disturbed.name() + ".rec"));
    } catch (AssertionError e) {
      throw new AssertionError("seed " + seed + ": " + e.getMessage(), e);
    }
  }

  private static Capture capture(RangeBench bench, AnsweringPeer one, AnsweringPeer two) {
    SerialPorts serial = new SerialPorts(MICROS);
    Map<String, Port> ports = new LinkedHashMap<>();
    ports.put("lane-1", serial.reserve(new PortSpec.ByPath(one.path().toString())));
    ports.put("lane-2", serial.reserve(new PortSpec.ByPath(two.path().toString())));
    return new Capture(
        ports,
        bench.store(),
        SETTINGS,
        bench.commands(),
        bench.announcer(),
        Clock.systemUTC(),
        MICROS);
  }

  private static CompletableFuture<Void> play(PulledCable cable) {
    return CompletableFuture.runAsync(() -> cable.play(PULLS));
  }

  private static List<Truth> truths(Path recorded) throws Exception {
    return Truth.read(Path.of(recorded.toString().replace(".rec", ".truth.csv")));
  }

  /** Gates that stand nearer together see the same ticks as a slower, shorter arrow. */
  private static List<Truth> scaled(List<Truth> truths) {
    double scale = OTHER_SPACING_M / Flight.SPACING_M;
    return truths.stream()
        .map(
            t ->
                new Truth(
                    t.boot(),
                    t.firstEdge(),
                    t.counts(),
                    t.speedFps() * scale,
                    t.lengthMm() * scale,
                    t.why()))
        .toList();
  }

  private void checkAgainstReplay(List<Shot> live, Path file) throws Exception {
    try (RangeBench replayed = RangeBench.in(folder.resolve("replay-" + file.getFileName()))) {
      replayed.replay(file);
      String station = file.getFileName().toString().replace(".rec", "");
      assertThat(live)
          .extracting(shot -> verdict(shot))
          .containsExactlyInAnyOrderElementsOf(
              replayed.shots(station).stream().map(PulledCableTest::verdict).toList());
    }
  }

  private static String verdict(Shot shot) {
    var gates = shot.byGates().orElseThrow();
    return "%d,%d,%d,%s,%s"
        .formatted(
            gates.boot(),
            gates.firstEdge(),
            gates.lastEdge(),
            shot.counts(),
            shot.figure().verdict());
  }
}
