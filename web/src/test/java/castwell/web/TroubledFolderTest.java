package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.web.Program.Outcome;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the machine does to a data folder: one sentence, exit code 2, and nothing announced is lost.
 * A disk is full by setrlimit(2), which needs no right to mount: nothing grows beyond a bound.
 */
@Tag("system")
@Timeout(300)
class TroubledFolderTest {
  /** Beyond what is said on standard error, less than any shots take. */
  private static final String BYTES = "65536";

  private static final List<String> ON_A_FULL_DISK = List.of("prlimit", "--fsize=" + BYTES);

  @TempDir Path folder;

  private static void assertRefused(Outcome outcome, String... told) {
    assertThat(outcome.exitCode()).as("%s", outcome).isEqualTo(2);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err())
        .matches("castwell: [^\\n]{10,600}\\.\\n") // one line
        .doesNotContain("Exception", "at castwell.")
        .contains(told);
  }

  private static Outcome run(List<String> wrapper, String... arguments) {
    try (Program program = Program.under(wrapper, arguments)) {
      return program.outcome();
    }
  }

  private Path data() {
    return folder.resolve("data");
  }

  private Outcome inData(List<String> wrapper, String command) {
    String words =
        command
            .replace("RECORDING", Recordings.cleanFive().toString())
            .replace("SHEET", folder.resolve("arrows.csv").toString());
    return run(
        wrapper,
        Stream.concat(Stream.of(words.split(" ")), Stream.of("--data", data().toString()))
            .toArray(String[]::new));
  }

  private void fill() throws IOException {
    Files.writeString(folder.resolve("arrows.csv"), "arrow,mass_gr\nOak,500\n");
    assertThat(inData(List.of(), "replay RECORDING").exitCode()).isZero();
  }

  @ParameterizedTest
  @ValueSource(strings = {"run --http 0", "replay RECORDING"})
  void onAFullDiskNothingStarts(String command) {
    assertRefused(inData(ON_A_FULL_DISK, command), "free some space");
  }

  @Test
  void onADiskThatFilledUpWhatIsWrittenIsRefusedAndWhatIsThereIsRead() throws IOException {
    fill();
    Stream<String> many = IntStream.range(0, 400).mapToObj(i -> "Oak-" + i + ",500");
    Files.write(
        folder.resolve("arrows.csv"), Stream.concat(Stream.of("arrow,mass_gr"), many).toList());
    assertRefused(inData(ON_A_FULL_DISK, "import --what arrows SHEET"), data().toString());
    assertThat(inData(ON_A_FULL_DISK, "export").exitCode()).isZero();
    assertThat(inData(List.of(), "export --what arrows").out()).doesNotContain("Oak-");
  }

  /** As root no file's mode would say no; the right to pass it over is given up first. */
  private static List<String> asAnyoneElse() {
    return System.getProperty("user.name").equals("root")
        ? List.of("setpriv", "--bounding-set=-dac_override,-dac_read_search")
        : List.of();
  }

  @Test
  void aFolderThatMayOnlyBeReadIsReadAndNotWritten() throws IOException {
    fill();
    Files.setPosixFilePermissions(data(), PosixFilePermissions.fromString("r-xr-xr-x"));
    try {
      Outcome export = inData(asAnyoneElse(), "export");
      assertThat(export.exitCode()).as("%s", export).isZero();
      assertThat(export.out().lines()).hasSize(6);
      for (String command : List.of("run --http 0", "import --what arrows SHEET")) {
        assertRefused(inData(asAnyoneElse(), command), data().toString(), "can't be written");
      }
    } finally {
      Files.setPosixFilePermissions(data(), PosixFilePermissions.fromString("rwxr-xr-x"));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"run --http 0", "export"})
  void aCutDatabaseIsRefusedAndLeftAsItIs(String command) throws IOException {
    fill();
    Path database = data().resolve("castwell.db");
    byte[] cut = Arrays.copyOf(Files.readAllBytes(database), 50_000);
    Files.write(database, cut);
    assertRefused(inData(List.of(), command), "castwell.db is cut short", "backup");
    assertThat(Files.readAllBytes(database)).isEqualTo(cut);
  }

  @ParameterizedTest
  @ValueSource(strings = {"run --http 0", "import --what arrows SHEET"})
  void notesInTheDatabasesPlaceAreRefusedAndLeftAsTheyAre(String command) throws IOException {
    Files.writeString(folder.resolve("arrows.csv"), "arrow,mass_gr\nOak,500\n");
    Files.createDirectories(data());
    Path notes = Files.writeString(data().resolve("castwell.db"), "My shooting notes. ".repeat(99));
    assertRefused(inData(List.of(), command), "castwell.db", "backup");
    assertThat(notes).content().startsWith("My shooting notes.");
  }

  @Test
  void toldToEndOnAFullDiskItSaysWhatGoesWithTheMemory() throws Exception {
    try (Program rehearsal = rehearsal()) {
      URI range = served(rehearsal);
      Until.holds("a shot", () -> shots(range) >= 1);
      setLimit(rehearsal, BYTES + ":");
      Until.holds("two that wait", () -> waiting(range) >= 2);
      rehearsal.terminate();
      Outcome outcome = rehearsal.outcome();
      assertThat(outcome.exitCode()).isZero();
      assertThat(outcome.err())
          .containsPattern("\\d+ shots could not be written before the end")
          .contains(data().toString());
    }
    assertThat(inData(List.of(), "export").exitCode()).isZero();
  }

  @Test
  void sqliteIsUnpackedIntoTheDataFolder() throws Exception {
    try (Program rehearsal = rehearsal()) {
      served(rehearsal);
      String natives = " " + data().resolve("native").toRealPath() + "/";
      String mapped = Files.readString(Path.of("/proc", String.valueOf(rehearsal.pid()), "maps"));
      assertThat(mapped.lines().filter(line -> line.toLowerCase(Locale.ROOT).contains("sqlite")))
          .filteredOn(line -> line.endsWith(".so"))
          .isNotEmpty()
          .allMatch(line -> line.contains(natives));
    }
    try (Stream<Path> unpacked = Files.list(data().resolve("native"))) {
      assertThat(unpacked).hasSize(1);
    }
  }

  private Program rehearsal() {
    return Program.start(
        "rehearse", "--data", data().toString(), "--http", "0", "--every", "0.5", "--seed", "5");
  }

  private static URI served(Program program) {
    return URI.create(program.line().replaceFirst(".*(http:.*)", "$1") + "api/range");
  }

  private static int shots(URI range) {
    return Asked.get(range).json().at("/session/shots").asInt();
  }

  private static int waiting(URI range) {
    return Asked.get(range).json().at("/stores/0/waiting").asInt();
  }

  private static void setLimit(Program program, String limit) throws Exception {
    Process set =
        new ProcessBuilder("prlimit", "--pid", String.valueOf(program.pid()), "--fsize=" + limit)
            .inheritIO()
            .start();
    assertThat(set.waitFor()).isZero();
  }
}
