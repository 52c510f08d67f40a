package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.AnotherJvm;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A data folder that can't be used is refused with one clear sentence. */
@Tag("slow")
class RefusedStoreTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("castwell.db");
  }

  private static void isRefused(ThrowingCallable opening, String... words) {
    assertThatThrownBy(opening)
        .isInstanceOf(StoreRefused.class)
        .message()
        .contains(words)
        .doesNotContain("\n")
        .doesNotContain("Exception")
        .endsWith(".");
  }

  private void fill() {
    try (Store store = Store.open(folder)) {
      store.writing(
          t -> {
            for (int i = 0; i < 5; i++) {
              Rows.shoot(t, 1 + 4 * i, Rows.NOON.plusSeconds(7L * i), true);
            }
          });
    }
  }

  @Test
  void aFileOfANewerProgram() {
    Store.open(folder).close();
    Databases.jdbi(file).useHandle(handle -> handle.execute("PRAGMA user_version = 99"));
    isRefused(() -> Store.open(folder), "castwell.db", "newer Castwell", "format 99");
    isRefused(() -> Store.openToRead(folder), "castwell.db", "newer Castwell", "format 99");
    int version = Databases.jdbi(file).withHandle(Schema::version);
    assertThat(version).isEqualTo(99);
  }

  @Test
  void aRefusalLetsTheFolderGo() {
    aFileOfANewerProgram();
    int known = Schema.STEPS.size();
    Databases.jdbi(file).useHandle(handle -> handle.execute("PRAGMA user_version = " + known));
    Store.open(folder).close();
  }

  @Test
  void aSecondOpener() {
    try (Store first = Store.open(folder)) {
      isRefused(() -> Store.open(folder), "Another Castwell", folder.toString(), "--data");
      first.writing(t -> t.rack().addBow("heron", Rows.NOON));
    }
    Store.open(folder).close();
  }

  @Test
  void aSecondProgram() throws IOException {
    try (AnotherJvm other = AnotherCastwell.writingTo(folder)) {
      assertThat(other.says()).isEqualTo("open");
      isRefused(() -> Store.open(folder), "Another Castwell", folder.toString(), "--data");
    }
    Store.open(folder).close();
  }

  @Test
  void aFileThatIsNoDatabase() throws IOException {
    Files.writeString(file, "These are my shooting notes. ".repeat(200));
    isRefused(() -> Store.open(folder), "castwell.db", "backup");
    isRefused(() -> Store.openToRead(folder), "castwell.db", "backup");
    assertThat(file).content().startsWith("These are my shooting notes.");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 60, 100, 3000, 4096, 5000, 8192})
  void aFileCutShort(int bytes) throws IOException {
    fill();
    cutTo(bytes);
    isRefused(() -> Store.open(folder), "castwell.db", "backup");
    isRefused(() -> Store.openToRead(folder), "castwell.db", "backup");
    assertThat(file).hasSize(bytes);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 100, 4095, 4096, 4097, 20000})
  void aFileThatLostItsEnd(int bytesLost) throws IOException {
    fill();
    cutTo((int) Files.size(file) - bytesLost);
    isRefused(() -> Store.open(folder), "castwell.db", "backup");
  }

  private void cutTo(int bytes) throws IOException {
    Files.write(file, Arrays.copyOf(Files.readAllBytes(file), bytes));
  }

  @Test
  void aFolderUnderAFile() throws IOException {
    Path notes = Files.writeString(folder.resolve("notes.txt"), "not a folder");
    isRefused(() -> Store.open(notes.resolve("data")), "notes.txt", "--data");
    isRefused(() -> Store.open(notes), "notes.txt", "--data");
    isRefused(() -> Store.openToRead(notes.resolve("data")), "notes.txt", "--data");
  }

  @Test
  void aDatabaseThatIsAFolder() throws IOException {
    Files.createDirectory(file);
    isRefused(() -> Store.open(folder), "castwell.db");
    isRefused(() -> Store.openToRead(folder), "castwell.db");
  }

  @Test
  void readingWhereNothingIsYet() {
    isRefused(() -> Store.openToRead(folder), "no data", folder.toString());
    assertThat(folder).isEmptyDirectory();
  }
}
