package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
  @Test
  void shotsOfFormatOneAreAllThereInTheNext() {
    Path old = folder.resolve("old");
    Path database = old.resolve("castwell.db");
    assertThat(old.toFile().mkdir()).isTrue();
    Databases.jdbi(database)
        .useHandle(
            handle -> {
              Schema.migrate(handle, database, Schema.STEPS.subList(0, 1));
              Rows.shoot(new Transaction(handle), 1, Rows.NOON, true);
            });

    try (Store store = Store.open(old)) {
      List<Shot> shots = new ArrayList<>();
      store.read(
          t -> {
            t.shots().each(shots::add);
            return null;
          });
      assertThat(shots).hasSize(1);
      assertThat(shots.get(0).byGates()).isPresent();
    }
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
