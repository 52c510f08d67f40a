package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.device.PseudoTerminal;
import castwell.web.Program.Outcome;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Bad input at the command line: one sentence, exit code 2, nothing of the program's inside. */
@Tag("slow")
@Timeout(300)
class CommandLineTest {
  @TempDir Path folder;

  private static void assertRefused(Outcome outcome, String... told) {
    assertThat(outcome.exitCode()).as("%s", outcome).isEqualTo(2);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err())
        .matches("castwell: [^\\n]{10,600}[.\"]\\n") // one line
        .doesNotContain("Exception", "at castwell.", "..")
        .contains(told);
  }

  private Path data() {
    return folder.resolve("data");
  }

  private Outcome inData(String command, String... more) {
    String[] all = new String[more.length + 3];
    all[0] = command;
    all[1] = "--data";
    all[2] = data().toString();
    System.arraycopy(more, 0, all, 3, more.length);
    return Program.run(all);
  }

  private Path write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, text);
  }

  @Test
  void withoutACommandItNamesTheHelp() {
    assertRefused(Program.run(), "castwell --help");
    Outcome help = Program.run("--help");
    assertThat(help.exitCode()).isZero();
    assertThat(help.out()).contains("run", "rehearse", "replay", "record", "export");
    Outcome more = Program.run("export", "--help");
    assertThat(more.exitCode()).isZero();
    assertThat(more.out()).contains("Usage: castwell export", "--data").doesNotContain("${");
  }

  @ParameterizedTest
  @ValueSource(strings = {"shoot", "run --faster", "export --what feathers"})
  void unknownWordsAreNamed(String words) {
    String[] arguments = words.split(" ");
    assertRefused(Program.run(arguments), "--help");
  }

  @Test
  void anAbsentPortIsRefused() {
    String port = folder.resolve("ttyNone").toString();
    assertRefused(inData("run", "--http", "0", "--port", port), "no port " + port);
    assertRefused(inData("record", "--port", port, folder.resolve("a.rec").toString()), port);
    assertThat(folder.resolve("a.rec")).doesNotExist();
  }

  @Test
  void aPortInUseIsRefused() {
    try (PseudoTerminal terminal = new PseudoTerminal();
        Program first =
            Program.start(
                "run",
                "--data",
                data().toString(),
                "--http",
                "0",
                "--port",
                terminal.port().toString())) {
      first.line(); // it serves, so it has the port
      Outcome second =
          Program.run(
              "run",
              "--data",
              folder.resolve("other").toString(),
              "--http",
              "0",
              "--port",
              terminal.port().toString());
      assertRefused(second, terminal.port() + " is in use");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"run --http 0", "replay RECORDING"})
  void aFolderThatCantBeMadeIsRefused(String command) throws IOException {
    Path below = write("file", "not a folder").resolve("data");
    String[] arguments =
        (command.replace("RECORDING", Recordings.cleanFive().toString()) + " --data " + below)
            .split(" ");
    assertRefused(Program.run(arguments), below.toString(), "can't be written");
  }

  @ParameterizedTest
  @ValueSource(strings = {"run --http 0", "export", "replay RECORDING"})
  void aDatabaseFromTheFutureIsRefusedAndLeftAlone(String command)
      throws IOException, SQLException {
    Files.createDirectories(data());
    Path file = data().resolve("castwell.db");
    try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      database.createStatement().execute("PRAGMA user_version = 9999");
    }
    byte[] before = Files.readAllBytes(file);
    String[] arguments =
        (command.replace("RECORDING", Recordings.cleanFive().toString()) + " --data " + data())
            .split(" ");
    assertRefused(Program.run(arguments), "newer Castwell", "9999");
    assertThat(Files.readAllBytes(file)).hasSameSizeAs(before);
    assertThat(userVersion(file)).isEqualTo(9999);
  }

  private static int userVersion(Path file) throws SQLException {
    try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file);
        var answer = database.createStatement().executeQuery("PRAGMA user_version")) {
      return answer.getInt(1);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"run", "export"})
  void whatIsNoDatabaseIsRefused(String command) throws IOException {
    write("data/castwell.db", "this was a shopping list once, and is no database at all\n");
    assertRefused(inData(command), data().resolve("castwell.db").toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[http | line 1",
        "[gates] @ spacing_m = 0.6 | nearest is \"spacing_mm\"",
        "[passage] @ slowest_mps = 150 | below fastest_mps",
      })
  void brokenSettingsAreRefusedByPlace(String settings, String told) throws IOException {
    write("data/castwell.toml", settings.replace(" @ ", "\n") + "\n");
    assertRefused(inData("run"), "castwell.toml", told);
  }

  @Test
  void aBadRecordingIsRefusedWholly() throws IOException {
    String sound = Files.readString(Recordings.cleanFive());
    Path headless = write("headless.rec", sound.substring(sound.indexOf('\n') + 1));
    assertRefused(inData("replay", headless.toString()), headless + ", line 1");
    Path odd = write("odd.rec", sound.replaceFirst("started: \\S+", "started: yesterday"));
    assertRefused(inData("replay", odd.toString()), "\"yesterday\"");
    Path cut = write("cut.rec", sound.substring(0, sound.length() - 20));
    assertRefused(inData("replay", Recordings.cleanFive().toString(), cut.toString()), "cut off");
    Path missing = folder.resolve("missing.rec");
    assertRefused(inData("replay", missing.toString()), "no such file");
    assertRefused(inData("replay", folder.toString()), "not a file");
    assertRefused(inData("export"), "no data"); // not even the sound one was taken in
  }

  @Test
  void namesThatNobodyEnteredAreRefused() {
    String recording = Recordings.cleanFive().toString();
    assertRefused(inData("replay", "--bow", "Nobody", recording), "no bow named Nobody");
    assertRefused(inData("replay", "--arrow", "Nobody", recording), "no arrow named Nobody");
    assertThat(inData("export").out().lines()).hasSize(1);
  }

  @Test
  void anExportOfNothingIsRefused() {
    assertRefused(inData("export"), "no data in " + data());
    assertThat(data()).doesNotExist();
  }

  @Test
  void anExportThatCantBeIsRefused() {
    assertThat(inData("replay", Recordings.cleanFive().toString()).exitCode()).isZero();
    assertRefused(inData("export", "--csvw"), "--out FILE");
    assertRefused(
        inData("export", "--csvw", "--format", "json", "--out", folder.resolve("a").toString()),
        "CSV");
    String nowhere = folder.resolve("none/shots.csv").toString();
    assertRefused(inData("export", "--out", nowhere), nowhere);
  }

  @ParameterizedTest
  @ValueSource(strings = {"nonsense", "127.0.0.1x:8017"})
  void nonsenseInsteadOfAnAddressIsRefused(String address) {
    assertRefused(inData("run", "--http", address), address);
  }

  @Test
  void anHttpPortInUseIsRefused() throws IOException {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      assertRefused(
          inData("run", "--http", String.valueOf(taken.getLocalPort())),
          "127.0.0.1:" + taken.getLocalPort());
    }
  }

  @Test
  void aSecondDaemonOnOneFolderIsRefused() {
    try (Program first =
        Program.start("rehearse", "--data", data().toString(), "--http", "0", "--seed", "1")) {
      assertThat(first.line()).contains("http://127.0.0.1:");
      assertRefused(inData("rehearse", "--http", "0"), "Another Castwell");
      assertRefused(inData("replay", Recordings.cleanFive().toString()), "Another Castwell");
      // Reading beside it is fine.
      assertThat(inData("export").exitCode()).isZero();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"-1", "often"})
  void aPaceThatCantBeIsRefused(String seconds) {
    assertRefused(inData("rehearse", "--http", "0", "--every", seconds), "--every", seconds);
  }

  @Test
  void aRecordingIsNeverWrittenOver() throws IOException {
    Path file = write("kept.rec", "kept");
    try (PseudoTerminal terminal = new PseudoTerminal()) {
      assertRefused(
          inData("record", "--port", terminal.port().toString(), file.toString()),
          file + " exists already");
    }
    assertThat(Files.readString(file)).isEqualTo("kept");
  }
}
