package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.device.PseudoTerminal;
import castwell.web.Program.Outcome;
import castwell.web.cli.Castwell;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Told to end, or its cable pulled: what came is on the disk. */
@Tag("slow")
@Timeout(300)
class EndingTest {
  @TempDir Path folder;

  @Test
  void aRehearsalToldToEndEndsCleanlyWithItsShots() throws Exception {
    Path data = folder.resolve("data");
    try (Program rehearsal =
        Program.start(
            "rehearse",
            "--data",
            data.toString(),
            "--http",
            "0",
            "--every",
            "0.5",
            "--seed",
            "5")) {
      String said = rehearsal.line();
      assertThat(said).matches("Castwell .* is at http://127\\.0\\.0\\.1:\\d+/");
      URI range = URI.create(said.replaceFirst(".*(http:.*)", "$1") + "api/range");
      Until.holds("three shots", () -> Asked.get(range).json().at("/session/shots").asInt() >= 3);
      // Someone is still reading the feed, and isn't waited for.
      try (FeedReader reader = FeedReader.after(range.resolve("/api/live"), 0)) {
        reader.next();
        rehearsal.terminate();
        Outcome outcome = rehearsal.outcome();
        assertThat(outcome.exitCode()).isZero();
        assertThat(outcome.err()).isEmpty();
      }
    }
    try (Connection database =
            DriverManager.getConnection("jdbc:sqlite:" + data.resolve("castwell.db"));
        var answer = database.createStatement().executeQuery("PRAGMA integrity_check")) {
      assertThat(answer.getString(1)).isEqualTo("ok");
    }
    Path csv = folder.resolve("shots.csv");
    assertThat(Castwell.run("export", "--data", data.toString(), "--out", csv.toString())).isZero();
    assertThat(Files.readAllLines(csv)).hasSizeGreaterThan(3);
    assertThat(Files.readString(data.resolve("castwell.toml"))).contains("spacing_mm = 609.6");
  }

  /** Lines as they came from a board, without their time stamps. */
  private static List<String> boardsLines() throws Exception {
    return Files.readAllLines(Recordings.cleanFive()).stream()
        .filter(line -> !line.startsWith("#"))
        .map(line -> line.substring(line.indexOf(' ') + 1))
        .toList();
  }

  @Test
  void aPulledCableEndsARecordingThatReplays() throws Exception {
    Path file = folder.resolve("taken.rec");
    PseudoTerminal terminal = new PseudoTerminal();
    try (Program record = recording(terminal, file)) {
      assertThat(new String(terminal.read(), StandardCharsets.US_ASCII)).isEqualTo("?\n");
      for (String line : boardsLines()) {
        terminal.write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
      }
      String last = boardsLines().get(boardsLines().size() - 1);
      Until.holds("the last line", () -> holds(file, last));
      terminal.close();
      Outcome outcome = record.outcome();
      assertThat(outcome.exitCode()).as("%s", outcome).isZero();
      assertThat(outcome.err()).isEmpty();
    }
    assertThat(linesOf(file)).isEqualTo(boardsLines());
    Path data = folder.resolve("replayed");
    assertThat(Castwell.run("replay", "--data", data.toString(), file.toString())).isZero();
  }

  @Test
  void aRecordingToldToEndIsWhole() throws Exception {
    Path file = folder.resolve("taken.rec");
    try (PseudoTerminal terminal = new PseudoTerminal();
        Program record = recording(terminal, file)) {
      terminal.read();
      String line = boardsLines().get(0);
      terminal.write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
      Until.holds("the line", () -> holds(file, line));
      record.terminate();
      assertThat(record.outcome().err()).isEmpty();
      assertThat(linesOf(file)).containsExactly(line);
    }
  }

  private Program recording(PseudoTerminal terminal, Path file) {
    return Program.start(
        "record",
        "--data",
        folder.resolve("data").toString(),
        "--port",
        terminal.port().toString(),
        file.toString());
  }

  private static boolean holds(Path file, String text) {
    try {
      return Files.readString(file).contains(text);
    } catch (IOException e) {
      return false;
    }
  }

  private static List<String> linesOf(Path file) throws Exception {
    return Files.readAllLines(file).stream()
        .filter(line -> !line.startsWith("#"))
        .map(line -> line.substring(line.indexOf(' ') + 1))
        .toList();
  }
}
