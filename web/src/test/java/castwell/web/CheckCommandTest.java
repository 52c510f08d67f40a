package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.device.PseudoTerminal;
import castwell.web.Program.Outcome;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The check as a person runs it, in a process of its own. */
@Tag("slow")
@Timeout(300)
class CheckCommandTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  @TempDir Path folder;
  private Path absent;

  @BeforeEach
  void nameAPort() throws IOException {
    absent = folder.resolve("ttyNone");
    Files.writeString(
        folder.resolve("castwell.toml"),
        "[[station]]\nname = \"range\"\nport = \"%s\"\n".formatted(absent));
  }

  private Outcome check(String... more) {
    String[] arguments = new String[more.length + 3];
    System.arraycopy(new String[] {"check", "--data", folder.toString()}, 0, arguments, 0, 3);
    System.arraycopy(more, 0, arguments, 3, more.length);
    return Program.run(arguments);
  }

  @Test
  void withoutABoardItSaysSoAndWhatToDoAndFails() throws IOException {
    Outcome text = check();
    assertThat(text.exitCode()).as("%s", text).isEqualTo(1);
    assertThat(text.err()).isEmpty();
    assertThat(text.out())
        .contains("Station range: bad", "bad         port: There is no port " + absent, "→ Plug")
        .contains("This computer: well", "● well        disk: ");
    Outcome json = check("--format", "json");
    assertThat(json.exitCode()).isEqualTo(1);
    JsonNode told = JSON.readTree(json.out());
    assertThat(told.path("level").asText()).isEqualTo("bad");
    assertThat(told.path("stations").path(0).path("items").path(0).path("name").asText())
        .isEqualTo("port");
  }

  @Test
  void besideTheRunningDaemonItAsksThatAndLeavesThePortAlone() {
    SaidByBoard said = new SaidByBoard();
    try (PseudoTerminal board = new PseudoTerminal();
        Served served = Served.at(folder, board.port())) {
      board.read();
      board.write(said.identity());
      for (int i = 0; i < 3; i++) {
        board.write(said.beat("CC", 812, 805));
      }
      Until.holds(
          "the beats",
          () -> Asked.get(served.at("/api/range")).json().toString().contains("gate-1 answers"));
      ScheduledExecutorService beating = Executors.newSingleThreadScheduledExecutor();
      beating.scheduleWithFixedDelay(
          () -> board.write(said.beat("CC", 812, 805)), 0, 200, TimeUnit.MILLISECONDS);
      Outcome asked = check("--http", String.valueOf(served.httpPort()));
      beating.shutdown();
      assertThat(asked.exitCode()).as("%s", asked).isZero();
      assertThat(asked.out()).contains("well        port: " + board.port() + " is open");
      assertThat(asked.err()).isEmpty();

      Outcome unanswered = check("--http", "1"); // nobody serves at that port
      assertThat(unanswered.exitCode()).as("%s", unanswered).isZero();
      assertThat(unanswered.err()).contains("has the ports", "127.0.0.1:1");
      assertThat(unanswered.out()).contains("can't tell  port: ", "well        disk: ");
    }
  }
}
