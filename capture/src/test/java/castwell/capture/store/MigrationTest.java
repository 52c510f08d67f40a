package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.analysis.wording.Phrase;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Readings.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A database of an earlier format goes forward, after a backup. */
class MigrationTest {
  private static final int NOW = Schema.STEPS.size();

  @TempDir Path folder;
  private Path file;
  private Path backup;

  @BeforeEach
  void fill() {
    file = folder.resolve("castwell.db");
    backup = Schema.backupOf(file, NOW);
    try (Store store = Store.open(folder)) {
      store.writing(t -> t.rack().addBow("heron", Rows.NOON));
    }
  }

  private static List<Consumer<Handle>> stepsAnd(Consumer<Handle> next) {
    List<Consumer<Handle>> steps = new ArrayList<>(Schema.STEPS);
    steps.add(next);
    return steps;
  }

  private static void addColour(Handle handle) {
    handle.execute("ALTER TABLE bow ADD COLUMN colour TEXT");
  }

  private void migrate(Consumer<Handle> next) {
    Databases.jdbi(file).useHandle(handle -> Schema.migrate(handle, file, stepsAnd(next)));
  }

  private static List<String> columnsOfBow(Path database) {
    return Databases.jdbi(database)
        .withHandle(
            handle ->
                handle
                    .createQuery("SELECT name FROM pragma_table_info('bow')")
                    .mapTo(String.class)
                    .list());
  }

  private static int version(Path database) {
    return Databases.jdbi(database).withHandle(Schema::version);
  }

  private static List<String> bows(Path database) {
    return Databases.jdbi(database)
        .withHandle(
            handle -> handle.createQuery("SELECT name FROM bow").mapTo(String.class).list());
  }

  @Test
  void theDataGoesForwardAndTheBackupHoldsTheOld() {
    migrate(MigrationTest::addColour);
    assertThat(version(file)).isEqualTo(NOW + 1);
    assertThat(columnsOfBow(file)).contains("colour");
    assertThat(bows(file)).containsExactly("heron");
    assertThat(version(backup)).isEqualTo(NOW);
    assertThat(columnsOfBow(backup)).doesNotContain("colour");
    assertThat(bows(backup)).containsExactly("heron");
  }

  /** Format 1 knew no speeds read elsewhere: every passage had its gates. */
  private Path formatOne() throws IOException {
    Path old = Files.createDirectory(folder.resolve("old"));
    Path database = old.resolve("castwell.db");
    Databases.jdbi(database)
        .useHandle(
            handle -> {
              Schema.migrate(handle, database, Schema.STEPS.subList(0, 1));
              Transaction t = new Transaction(handle, new Remembered());
              long shot = shootAsInFormatOne(handle);
              long bow = t.rack().addBow("heron", Rows.NOON);
              long arrow = t.rack().addArrow("reed", Rows.NOON);
              long now = Rows.NOON.toEpochMilli();
              handle.execute(
                  """
                  INSERT INTO bow_state (bow_id, since_ms, draw_weight_n, draw_length_m, done, entered_ms)
                  VALUES (?, ?, 230, 0.7, 'new string', ?)""",
                  bow,
                  now,
                  now);
              handle.execute(
                  "INSERT INTO arrow_entry (arrow_id, mass_kg, length_m, entered_ms) VALUES (?, 0.03, 0.74, ?)",
                  arrow,
                  now);
              Tags.Pair tags = new Tags.Pair(OptionalLong.of(bow), OptionalLong.of(arrow));
              t.tags().tagShot(shot, tags, Rows.NOON, "capture", "");
              t.decisions().decide(shot, Decided.SET_ASIDE, "plucked", Rows.NOON, "page");
            });
    return old;
  }

  /** A passage with its edges and its figure, by the columns that there were. */
  private static long shootAsInFormatOne(Handle handle) {
    handle
        .createScript(
            """
            INSERT INTO board VALUES (1, 'gate-1', 0);
            INSERT INTO listening VALUES (1, 'range', '/dev/ttyUSB0', 1777723200000);
            INSERT INTO edge VALUES (1, 7, 1, 'A', 'B', 1000000, 0), (1, 7, 2, 'B', 'B', 1024384, 0),
              (1, 7, 3, 'A', 'C', 1029600, 20), (1, 7, 4, 'B', 'C', 1053984, 0);
            INSERT INTO calibration VALUES (1, 'range', 1777723200000, NULL, 0.6096, 0.0003, 0.001, 2, 'RESONATOR',
              1777723200000, 'the configuration');
            INSERT INTO session VALUES (1, 'range', '2026-05-02', 1777723200000, 'the rules');
            INSERT INTO passage VALUES (1, 'gate-1.7.1', 1, 7, 1, 4, 1000000, 0, 0, 1, 'range', 1777723200000, 1, 1, 1,
              NULL);
            INSERT INTO figure VALUES (1, 1, 1, 2e6, 1e-5, 1.2, 50, 0.05, 0.05, 50, 0.05, NULL, NULL, 0.74, 0.05, 1,
              'clean', '')""")
        .execute();
    return 1;
  }

  private static List<Shot> shots(Store store) {
    List<Shot> shots = new ArrayList<>();
    store.read(
        t -> {
          t.shots().each(shots::add);
          return null;
        });
    return shots;
  }

  @Test
  void shotsOfFormatOneAreAllThereInTheNext() throws IOException {
    try (Store store = Store.open(formatOne())) {
      assertThat(shots(store)).hasSize(1);
      Shot shot = shots(store).get(0);
      assertThat(shot.byGates().orElseThrow().firstEdge()).isEqualTo(1);
      assertThat(shot.figure().speedMps()).hasValue(50);
      assertThat(shot.bow().orElseThrow().done()).isEqualTo("new string");
      assertThat(shot.bow().orElseThrow().measures()).isEqualTo(Measures.none());
      assertThat(shot.arrow().orElseThrow().lengthM()).hasValue(0.74);
      assertThat(shot.arrow().orElseThrow().measures().words(ArrowMeasure.NOTE)).isEmpty();
      assertThat(shot.reasons()).containsExactly(Phrase.of("verdict.set_aside_because", "plucked"));
    }
  }

  @Test
  void aSpeedReadElsewhereStandsBesideShotsOfFormatOne() throws IOException {
    Path old = formatOne();
    try (Store store = Store.open(old)) {
      store.writing(
          t -> {
            long session = t.sessions().all().get(0).id();
            long id = t.passages().enter("h-1", Rows.STATION, Rows.NOON, session, 1);
            t.readings()
                .add(id, new Reading(OptionalDouble.of(45), 0.1, 0.2, "", "notes"), Rows.NOON, "");
          });
      assertThat(shots(store)).extracting(shot -> shot.byGates().isPresent()).contains(true, false);
    }
    Databases.jdbi(old.resolve("castwell.db"))
        .useHandle(
            handle -> {
              // SQLite's own word on the constraints that were loosened
              assertThat(handle.createQuery("PRAGMA integrity_check").mapTo(String.class).list())
                  .containsExactly("ok");
              assertThat(handle.createQuery("PRAGMA foreign_key_check").mapToMap().list())
                  .isEmpty();
              for (String table : List.of("edge", "shot_tag", "decision", "reading")) {
                assertThatThrownBy(() -> handle.execute("DELETE FROM " + table))
                    .hasMessageContaining(table + " is append-only");
              }
            });
  }

  /** What the settings had from the start was measured by nobody, and knew of no other errors. */
  @Test
  void gatesOfFormatOneThatNobodyMeasuredSaySo() throws IOException {
    try (Store store = Store.open(formatOne())) {
      Calibration gates =
          Rows.maybe(store, t -> t.calibrations().inForce(Rows.STATION, Rows.NOON))
              .orElseThrow()
              .calibration();
      assertThat(gates.isMeasured()).isFalse();
      assertThat(gates.spacingM()).isEqualTo(0.6096);
      assertThat(gates.spacingUM()).isEqualTo(Calibration.UNMEASURED_U_M);
      assertThat(gates.errors()).isEqualTo(SetUpErrors.USUAL);
      assertThat(shots(store).get(0).byGates().orElseThrow().isMeasured()).isFalse();
    }
  }

  @Test
  void gatesAreReadBackAsEntered() {
    Calibration measured = Rows.calibration(0.6123).with(SetUpErrors.USUAL);
    Calibration asSet =
        new Calibration(0.6096, 0.0003, 1e-3, 2, Oscillator.CRYSTAL, false, SetUpErrors.NONE)
            .unmeasured();
    try (Store store = Store.open(folder)) {
      for (Calibration entered : List.of(measured, asSet, Rows.calibration(0.6096))) {
        store.writing(
            t ->
                t.calibrations()
                    .enter(Rows.STATION, Rows.NOON, Optional.empty(), entered, Rows.NOON, "x"));
        assertThat(Rows.maybe(store, t -> t.calibrations().inForce(Rows.STATION, Rows.NOON)))
            .hasValueSatisfying(entry -> assertThat(entry.calibration()).isEqualTo(entered));
      }
    }
  }

  /** Format 6 kept seven measures of a bow, and neither its tiller nor an arrow's spine. */
  private Path formatSix() throws IOException {
    Path old = Files.createDirectory(folder.resolve("six"));
    Path database = old.resolve("castwell.db");
    Databases.jdbi(database)
        .useHandle(
            handle -> {
              Schema.migrate(handle, database, Schema.STEPS.subList(0, 6));
              handle.execute("INSERT INTO bow (name, entered_ms) VALUES ('heron', 1)");
              handle.execute(
                  """
                  INSERT INTO bow_state (bow_id, since_ms, draw_weight_n, draw_length_m, nock_to_nock_m,
                    string_follow_m, brace_height_m, mass_kg, wood, tip_width_m, string_mass_kg, done, entered_ms)
                  VALUES (1, 1, 230, 0.7, 1.7, -0.01, 0.15, 0.6, 'elm', 0.012, 0.006, '', 1)""");
              handle.execute("INSERT INTO arrow (name, entered_ms) VALUES ('reed', 1)");
              handle.execute(
                  """
                  INSERT INTO arrow_entry (arrow_id, mass_kg, length_m, diameter_m, point, note, entered_ms)
                  VALUES (1, 0.03, 0.74, 0.008, 'field', 'old', 1)""");
            });
    return old;
  }

  @Test
  void measuresOfFormatSixAreAllThereAndNewOnesCanBeTaken() throws IOException {
    Path old = formatSix();
    try (Store store = Store.open(old)) {
      Measures<BowMeasure> bow = Rows.list(store, t -> t.rack().states(1)).get(0).measures();
      assertThat(bow.numbers())
          .isEqualTo(
              Map.of(
                  BowMeasure.NOCK_TO_NOCK, 1.7,
                  BowMeasure.STRING_FOLLOW, -0.01,
                  BowMeasure.BRACE_HEIGHT, 0.15,
                  BowMeasure.MASS, 0.6,
                  BowMeasure.TIP_WIDTH, 0.012,
                  BowMeasure.STRING_MASS, 0.006));
      assertThat(bow.words()).isEqualTo(Map.of(BowMeasure.WOOD, "elm"));
      Measures<ArrowMeasure> arrow = Rows.list(store, t -> t.rack().arrows()).get(0).measures();
      assertThat(arrow.numbers())
          .isEqualTo(Map.of(ArrowMeasure.LENGTH, 0.74, ArrowMeasure.DIAMETER, 0.008));
      assertThat(arrow.words())
          .isEqualTo(Map.of(ArrowMeasure.POINT, "field", ArrowMeasure.NOTE, "old"));

      Measures<BowMeasure> tillered = bow.with(BowMeasure.TILLER, -0.003);
      store.writing(t -> t.rack().addState(1, Rows.NOON, 230, 0.7, tillered, "", Rows.NOON));
      assertThat(Rows.list(store, t -> t.rack().states(1)))
          .extracting(Rack.BowState::measures)
          .containsExactly(bow, tillered);
    }
    Databases.jdbi(old.resolve("castwell.db"))
        .useHandle(handle -> assertThat(new Integrity(handle).faults()).isEmpty());
  }

  @Test
  void theBackupOpensWithTheOldProgram() throws IOException {
    migrate(MigrationTest::addColour);
    Path old = Files.createDirectory(folder.resolve("old"));
    Files.copy(backup, old.resolve("castwell.db"));
    try (Store store = Store.open(old)) {
      assertThat(Rows.maybe(store, t -> t.rack().bow("heron"))).isPresent();
    }
  }

  @Test
  void aNewDatabaseNeedsNoBackup() {
    Store.open(folder.resolve("new")).close();
    assertThat(folder.resolve("new").toFile().list()).noneMatch(name -> name.contains("before"));
  }

  @Test
  void nothingIsDoneTwice() {
    migrate(MigrationTest::addColour);
    migrate(MigrationTest::addColour);
    assertThat(version(file)).isEqualTo(NOW + 1);
  }

  @Test
  void aStepThatFailedHalfwayLeavesEverythingAndCanBeTriedAgain() {
    Consumer<Handle> failing =
        handle -> {
          addColour(handle);
          throw new IllegalStateException("the power went");
        };
    assertThatThrownBy(() -> migrate(failing)).hasMessageContaining("the power went");
    assertThat(version(file)).isEqualTo(NOW);
    assertThat(columnsOfBow(file)).doesNotContain("colour");
    migrate(MigrationTest::addColour);
    assertThat(version(file)).isEqualTo(NOW + 1);
    assertThat(bows(backup)).containsExactly("heron");
  }

  @Test
  void aBackupCutShortByThePowerIsMadeAnew() throws IOException {
    Files.writeString(backup, "half a backup");
    migrate(MigrationTest::addColour);
    assertThat(bows(backup)).containsExactly("heron");
    try (var files = Files.list(folder)) {
      assertThat(files).noneMatch(path -> path.toString().endsWith(".part"));
    }
  }
}
