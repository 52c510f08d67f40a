package castwell.web.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a page may show is said by the file of texts, and no sentence of it stands in the code. */
class LeftBehindTest {
  private static final List<String> SHOWN =
      List.of(
          "../analysis/src/main/java/castwell/analysis/verdict",
          "../capture/src/main/java/castwell/capture/health",
          "../capture/src/main/java/castwell/capture/plan",
          "../capture/src/main/java/castwell/capture/station",
          "../capture/src/main/java/castwell/capture/settings",
          "../capture/src/main/java/castwell/capture/derive",
          "../capture/src/main/java/castwell/capture/command",
          "../capture/src/main/java/castwell/capture/announce",
          "../capture/src/main/java/castwell/capture/clock",
          "../capture/src/main/java/castwell/capture/cell",
          "../capture/src/main/java/castwell/capture/misfit",
          "../capture/src/main/java/castwell/capture/daemon",
          "../capture/src/main/java/castwell/capture/device",
          "../capture/src/main/java/castwell/capture/recording",
          "../capture/src/main/java/castwell/capture/rehearsal",
          "../capture/src/main/java/castwell/capture/intake",
          "../capture/src/main/java/castwell/capture/publish",
          "src/main/java/castwell/web/http",
          "src/main/java/castwell/web/workbench");

  /** A start that fails, a recording and a check of the store are told on the terminal alone. */
  private static final Set<String> ON_THE_TERMINAL =
      Set.of(
          "HeaderText.java",
          "PortSpec.java",
          "Recording.java",
          "RecordingText.java",
          "RehearsalLink.java",
          "ServerPem.java",
          "ServerTls.java",
          "Verification.java",
          "WebServer.java");

  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
  private static final Pattern COMMENT =
      Pattern.compile("(?m)^\\s*//.*$|/\\*.*?\\*/", Pattern.DOTALL);
  private static final Pattern SENTENCE =
      Pattern.compile("(?=.*[A-Za-z%'] [A-Za-z%]).*[A-Za-z%s)\"][.:?!]", Pattern.DOTALL);

  @Test
  void noSentenceThatAPageShowsStandsInTheCode() throws IOException {
    List<String> found = new ArrayList<>();
    for (String folder : SHOWN) {
      try (Stream<Path> files = Files.walk(Path.of(folder))) {
        for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
          String name = file.getFileName().toString();
          if (!ON_THE_TERMINAL.contains(name)) {
            sentences(Files.readString(file)).forEach(said -> found.add(name + ": " + said));
          }
        }
      }
    }
    assertThat(found).isEmpty();
  }

  private static List<String> sentences(String code) {
    return LITERAL
        .matcher(COMMENT.matcher(code).replaceAll(""))
        .results()
        .map(literal -> literal.group(1))
        .filter(literal -> SENTENCE.matcher(literal).matches())
        .toList();
  }

  @Test
  void aSentenceLeftBehindIsFound() {
    assertThat(sentences("say(\"Gate B never saw it.\");\n  // \"Nor this one.\"\n"))
        .containsExactly("Gate B never saw it.");
    assertThat(sentences("f(\"There is no bow named %s: add it.\".formatted(a), \"live.a.b\")"))
        .hasSize(1);
    assertThat(sentences("f(\"a draw\", \"data-next\", \"Bearer realm\")")).isEmpty();
  }
}
