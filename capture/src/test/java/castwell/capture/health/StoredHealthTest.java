package castwell.capture.health;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.reading.Limits;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.capture.English;
import castwell.capture.assembly.AssemblyTiming;
import castwell.capture.settings.AirSettings;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.Store;
import castwell.capture.view.health.Level;
import castwell.capture.view.health.StationHealth;
import castwell.capture.view.health.StationPart;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.Sentence.Levels;
import castwell.capture.wire.Sentence.Surroundings;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Health as it is read from a real data folder with days of heartbeats. */
class StoredHealthTest {
  private static final int HZ = 2_000_000;
  private static final double ERROR = 300e-6;
  private static final Instant NOW = Instant.parse("2026-05-09T12:00:00Z");
  private static final int MINUTES_A_DAY = 120;
  private static final CaptureSettings SETTINGS =
      new CaptureSettings(
          AssemblyTiming.defaults(),
          Limits.defaults(),
          new Calibration(0.6096, 0.0003, 0.001, 2.0, Oscillator.CRYSTAL),
          new AirSettings(0, 15, 0.5),
          50e-6 / Math.sqrt(3),
          ZoneOffset.UTC);

  @TempDir Path folder;
  private final Random random = new Random(7);
  private Store store;

  @BeforeEach
  void open() {
    store = Store.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  /** Two hours up to an instant, from a board whose clock is fast and that beats now and then. */
  private void day(int boot, Instant until, int lightA) {
    day(boot, until, lightA, 20);
  }

  private void day(int boot, Instant until, int lightA, int everySeconds) {
    Instant from = until.minus(Duration.ofMinutes(MINUTES_A_DAY));
    store.writing(
        t -> {
          long board =
              t.boards().named("gate-1").stream()
                  .findFirst()
                  .orElseGet(() -> t.boards().begin("gate-1"))
                  .id();
          long listening = t.boards().listening("range", "/dev/ttyACM0", from);
          Identity identity = new Identity(0, 1, "sim-1", "gate-1", boot, HZ, 0, 0, 64, 'P');
          t.raw().identity(board, listening, identity, 0);
          for (int second = 1; second <= MINUTES_A_DAY * 60; second += everySeconds) {
            long late = random.nextInt(300);
            t.raw()
                .heartbeat(
                    board,
                    listening,
                    beat(boot, Math.round((double) second * HZ * (1 + ERROR)), lightA),
                    second * 1_000_000L + late);
          }
        });
  }

  private Heartbeat beat(int boot, long ticks, int lightA) {
    return new Heartbeat(
        0,
        boot,
        ticks,
        0,
        4,
        0,
        0,
        Optional.of(new Levels(false, false)),
        new Surroundings(
            OptionalInt.of(lightA + random.nextInt(5)),
            OptionalInt.of(805 + random.nextInt(5)),
            OptionalInt.of(5010 + random.nextInt(7)),
            OptionalInt.of(2150),
            OptionalInt.of(1875),
            OptionalInt.of(5510)),
        70);
  }

  private Checkup checkup() {
    Clock clock = Clock.fixed(NOW, ZoneOffset.UTC);
    return new Checkup(store, SETTINGS, List.of("range"), new StoredBeats(store, clock), clock);
  }

  private static Item item(Health health, String name) {
    return health.items().stream().filter(i -> i.name().equals(name)).findFirst().orElseThrow();
  }

  /** Gate A gets a seventh less today than on the three days before. */
  @Test
  void whatIsStoredTellsLightSupplyAndClock() {
    for (int day = 3; day >= 1; day--) {
      day(10 - day, NOW.minus(Duration.ofDays(day)), 810);
    }
    day(10, NOW, 700);
    Health health = checkup().of("range");
    assertThat(item(health, "light A").level()).isEqualTo(Level.ATTENTION);
    assertThat(English.say(item(health, "light A").sentence())).contains("of 1023, usually 812");
    assertThat(item(health, "light B").level()).isEqualTo(Level.WELL);
    assertThat(item(health, "supply").level()).isEqualTo(Level.WELL);
    assertThat(item(health, "port").level()).isEqualTo(Level.CANT_TELL);
    // The error that the beats were made with; the host's own 29 ppm is most of the uncertainty.
    Item clock = item(health, "board's clock");
    Measured ppm = clock.measured().orElseThrow();
    assertThat(ppm.value()).isBetween(299.0, 301.0);
    assertThat(ppm.u().getAsDouble()).isBetween(28.8, 30.0);
    assertThat(clock.level()).isEqualTo(Level.ATTENTION);
    assertThat(English.say(clock.sentence())).contains("300 ppm faster");
  }

  @Test
  void beatsOfLongAgoTellNothingOfNow() {
    day(7, NOW.minus(Duration.ofDays(1)), 810);
    Health health = checkup().of("range");
    assertThat(item(health, "light A").level()).isEqualTo(Level.CANT_TELL);
    assertThat(item(health, "heartbeat").level()).isEqualTo(Level.CANT_TELL);
  }

  @Test
  void anEmptyStoreCantTell() {
    assertThat(checkup().of("range").level()).isEqualTo(Level.CANT_TELL);
    assertThat(checkup().ofComputer().items()).extracting(Item::name).contains("disk", "backup");
    assertThat(checkup().ofComputer().items())
        .filteredOn(item -> item.name().equals("backup"))
        .allMatch(item -> item.level() == Level.WELL); // there is nothing to lose yet
  }

  @Test
  void theViewHoldsWhatThePublisherAndThePageTell() {
    day(7, NOW, 810);
    HealthView view = new HealthView(checkup(), English::say);
    StationHealth one = view.of("range");
    assertThat(one.at()).isEqualTo(NOW);
    assertThat(one.health().items())
        .hasSize(checkup().of("range").items().size() + checkup().ofComputer().items().size());
    assertThat(view.all().stations()).extracting(StationPart::station).containsExactly("range");
  }

  /** The constants by which a disk's days are told, against what a real database takes. */
  @Test
  void aStoredBeatTakesWhatTheDisksDaysAreToldBy() throws Exception {
    long before = bytesOnDisk();
    day(7, NOW, 810, 1);
    double each = (double) (bytesOnDisk() - before) / (MINUTES_A_DAY * 60);
    assertThat(each).isBetween(0.7 * DiskItem.BEAT_BYTES, 1.3 * DiskItem.BEAT_BYTES);
  }

  /** Closing moves what the log holds into the database. */
  private long bytesOnDisk() throws Exception {
    store.close();
    long bytes = Files.size(folder.resolve("castwell.db"));
    store = Store.open(folder);
    return bytes;
  }

  @Test
  void aBeatIsHeardNowWhenItCameOfLate() {
    day(7, NOW.minusSeconds(60), 810);
    List<HeardBeat> beats = new StoredBeats(store, Clock.fixed(NOW, ZoneOffset.UTC)).beats("range");
    assertThat(beats).hasSize(300);
    assertThat(beats.get(299).at()).isAfter(NOW.minusSeconds(90));
  }
}
