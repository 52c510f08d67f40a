package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.wording.Phrase;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Readings.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
              Transaction t = new Transaction(handle);
              Passages.Row shot = Rows.shoot(t, 1, Rows.NOON, true);
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
              t.tags().tagShot(shot.id(), tags, Rows.NOON, "capture", "");
              t.decisions().decide(shot.id(), Decided.SET_ASIDE, "plucked", Rows.NOON, "page");
            });
    return old;
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
      assertThat(shot.bow().orElseThrow().measures()).isEqualTo(Rack.Measures.NONE);
      assertThat(shot.arrow().orElseThrow().lengthM()).hasValue(0.74);
      assertThat(shot.arrow().orElseThrow().note()).isEmpty();
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
