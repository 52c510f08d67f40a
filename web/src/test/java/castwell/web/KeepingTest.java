package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.store.Store;
import castwell.web.Program.Outcome;
import castwell.web.cli.Castwell;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Copies that can be trusted, and a database that can be checked. */
@Tag("slow")
@Timeout(300)
class KeepingTest {
  @TempDir Path scratch;
  private Path data;

  @BeforeEach
  void shoot() {
    data = scratch.resolve("data");
    Recordings.replayInto(data);
  }

  /** In this process: a JVM for each would take most of the time. */
  private static Outcome castwell(String... arguments) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    ByteArrayOutputStream complained = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(said, true, StandardCharsets.UTF_8));
      System.setErr(new PrintStream(complained, true, StandardCharsets.UTF_8));
      int exitCode = Castwell.run(arguments);
      return new Outcome(
          exitCode,
          said.toString(StandardCharsets.UTF_8),
          complained.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  private Outcome onData(String command, String... more) {
    return castwell(
        Stream.concat(Stream.of(command, "--data", data.toString()), Stream.of(more))
            .toArray(String[]::new));
  }

  private static String shots(Path folder) throws IOException {
    Path csv = Files.createTempFile("shots", ".csv");
    assertThat(Castwell.run("export", "--data", folder.toString(), "--out", csv.toString()))
        .isZero();
    return Files.readString(csv);
  }

  private static void tamper(Path database, String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        var statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  @Test
  void aBackupIsOneFileThatHoldsTheSameAndIsEntered() throws Exception {
    Path copy = scratch.resolve("copy.db");
    Outcome outcome = onData("backup", copy.toString());
    assertThat(outcome.err()).isEmpty();
    assertThat(outcome.out()).startsWith(copy + ": 5 passages from 2026-").contains("20 edges");
    assertThat(outcome.exitCode()).isZero();
    try (Stream<Path> files = Files.list(scratch)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrder("data", "copy.db");
    }
    try (Store store = Store.openToRead(data)) {
      assertThat(store.<Long>read(t -> t.holding().passages())).isEqualTo(5);
    }
    assertThat(onData("backup", copy.toString()).err()).contains("exists already");
  }

  @Test
  void withoutANameItGoesIntoTheDataFolder() throws Exception {
    assertThat(onData("backup").exitCode()).isZero();
    try (Stream<Path> files = Files.list(data.resolve("backups"))) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .singleElement()
          .asString()
          .matches("castwell-\\d{8}T\\d{6}Z\\.db");
    }
  }

  @Test
  void aBackupIsMadeBesideADaemonAndARestoreWaitsForItsEnd() throws Exception {
    Path copy = scratch.resolve("copy.db");
    try (Program daemon = Program.start("run", "--data", data.toString(), "--http", "0")) {
      daemon.line();
      assertThat(onData("backup", copy.toString()).exitCode()).isZero();
      Outcome restore = onData("restore", copy.toString());
      assertThat(restore.exitCode()).isEqualTo(2);
      assertThat(restore.err()).contains("Another Castwell is writing to " + data);
    }
  }

  @Test
  void aRestoredFolderHoldsWhatTheBackupDidAndSetsTheOtherAside() throws Exception {
    Path copy = scratch.resolve("copy.db");
    String before = shots(data);
    onData("backup", copy.toString());
    Path other = scratch.resolve("other");
    try (Store empty = Store.open(other)) {
      assertThat(empty.<Long>read(t -> t.holding().passages())).isZero();
    }
    Outcome outcome = castwell("restore", "--data", other.toString(), copy.toString());
    assertThat(outcome.err()).isEmpty();
    assertThat(outcome.out()).contains("now holds 5 passages").contains("set-aside-");
    assertThat(shots(other)).isEqualTo(before);
    try (Stream<Path> files = Files.list(other)) {
      assertThat(files.filter(f -> f.toString().contains("set-aside"))).hasSize(1);
    }
  }

  @Test
  void aFolderThatWasLostComesBack() throws Exception {
    Path copy = scratch.resolve("copy.db");
    String before = shots(data);
    onData("backup", copy.toString());
    Path anew = scratch.resolve("anew");
    assertThat(castwell("restore", "--data", anew.toString(), copy.toString()).exitCode()).isZero();
    assertThat(shots(anew)).isEqualTo(before);
  }

  @Test
  void whatIsNoBackupIsRefusedAndTheFolderStaysAsItWas() throws Exception {
    String before = shots(data);
    Path text = Files.writeString(scratch.resolve("notes.txt"), "not a database, but long enough");
    Path cut = scratch.resolve("cut.db");
    onData("backup", cut.toString());
    byte[] whole = Files.readAllBytes(cut);
    Files.write(cut, Arrays.copyOf(whole, whole.length / 2));
    Path foreign = scratch.resolve("foreign.db");
    tamper(foreign, "CREATE TABLE t (x)");
    for (Path bad : List.of(text, cut, foreign, scratch.resolve("missing.db"))) {
      Outcome outcome = onData("restore", bad.toString());
      assertThat(outcome.exitCode()).as("%s: %s", bad, outcome).isEqualTo(2);
      assertThat(outcome.err().strip().lines()).as("%s", bad).hasSize(1);
      assertThat(shots(data)).isEqualTo(before);
    }
  }

  @Test
  void allIsWell() {
    Outcome outcome = onData("verify");
    assertThat(outcome.out())
        .isEqualTo("All is well: 5 figures of 5 passages were derived anew and are the same.\n");
    assertThat(outcome.exitCode()).isZero();
  }

  @Test
  void aFigureThatDoesNotFollowIsFound() throws Exception {
    tamper(
        data.resolve("castwell.db"),
        "UPDATE figure SET speed_mps = speed_mps * 1.0000001 WHERE passage_id = 2");
    Outcome outcome = onData("verify");
    assertThat(outcome.exitCode()).isEqualTo(1);
    assertThat(outcome.out()).contains("don't follow from its edges").contains("1 faults");
  }

  @Test
  void changedTicksAreFound() throws Exception {
    Path database = data.resolve("castwell.db");
    String guard;
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        var trigger =
            connection
                .createStatement()
                .executeQuery("SELECT sql FROM sqlite_schema WHERE name = 'edge_no_update'")) {
      guard = trigger.getString(1);
    }
    tamper(
        database,
        "DROP TRIGGER edge_no_update",
        "UPDATE edge SET ticks = ticks + 1 WHERE number = 6",
        guard);
    Outcome outcome = onData("verify");
    assertThat(outcome.exitCode()).isEqualTo(1);
    assertThat(outcome.out()).contains("don't follow from its edges").contains("1 faults");
  }

  @Test
  void aGuardThatIsGoneIsFound() throws Exception {
    tamper(data.resolve("castwell.db"), "DROP TRIGGER edge_no_update");
    Outcome outcome = onData("verify");
    assertThat(outcome.exitCode()).isEqualTo(1);
    assertThat(outcome.out()).contains("There is no trigger edge_no_update.");
  }

  @Test
  void aRowThatPointsNowhereIsFound() throws Exception {
    tamper(
        data.resolve("castwell.db"),
        "PRAGMA foreign_keys = OFF",
        "INSERT INTO decision (passage_id, decided, reason, at_ms, decided_by) VALUES (77, 'SET_ASIDE', 'x', 0, 'y')");
    assertThat(onData("verify").out()).contains("A row of decision (1) points to one of passage");
  }

  @Test
  void aDamagedPageIsFound() throws Exception {
    Path database = data.resolve("castwell.db");
    onData("backup", scratch.resolve("copy.db").toString()); // and the log is in the database
    tamper(database, "PRAGMA wal_checkpoint(TRUNCATE)");
    byte[] bytes = Files.readAllBytes(database);
    for (int i = bytes.length - 4096; i < bytes.length - 2048; i++) {
      bytes[i] ^= 0x5A;
    }
    Files.write(scratch.resolve("bad"), bytes);
    Files.move(scratch.resolve("bad"), database, StandardCopyOption.REPLACE_EXISTING);
    Outcome outcome = onData("verify");
    assertThat(outcome.exitCode()).as("%s", outcome).isIn(1, 2);
    assertThat(outcome.err()).doesNotContain("at castwell");
  }
}
