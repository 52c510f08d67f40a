package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.web.text.Texts;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.Writer;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A made language, in which everything stands in «»: what doesn't was said by the code. */
@Tag("slow")
@Timeout(300)
class OtherLanguageTest {
  private static final Path MADE =
      Path.of("target", "test-classes", "castwell", "web", "text", "made.properties");
  private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:\\d+");
  private static final Pattern HIDDEN =
      Pattern.compile("<(script|style|svg|head)\\b.*?</\\1>", Pattern.DOTALL);
  private static final Pattern WORDS = Pattern.compile(">([^<>]*[a-z]{2,} [a-z]{2,}[^<>]*)<");

  @TempDir static Path folder;
  private static Program program;
  private static String address;

  @BeforeAll
  static void start() throws IOException {
    Properties made = new Properties();
    Texts.english().all().forEach((key, text) -> made.put(key, "«" + text + "»"));
    Files.createDirectories(MADE.getParent());
    try (Writer writer = Files.newBufferedWriter(MADE)) {
      made.store(writer, null);
    }
    program =
        Program.under(
            List.of("env", "JAVA_TOOL_OPTIONS=-Dcastwell.language=made"),
            "run",
            "--data",
            folder.resolve("data").toString(),
            "--http",
            "0");
    Matcher found = ADDRESS.matcher(program.line());
    assertThat(found.find()).isTrue();
    address = found.group();
  }

  @AfterAll
  static void end() throws IOException {
    program.close();
    Files.deleteIfExists(MADE);
  }

  private static void assertSaid(JsonNode sentence) {
    assertThat(sentence.asText()).startsWith("«").endsWith("»");
  }

  @Test
  void isSpokenOfEveryItemOfHealth() {
    JsonNode health = Asked.get(URI.create(address + "/api/health?station=range")).json();
    assertThat(health.path("items")).isNotEmpty();
    for (JsonNode item : health.path("items")) {
      assertSaid(item.path("title"));
      assertSaid(item.path("sentence"));
      assertSaid(item.path("remedy"));
    }
  }

  @Test
  void isSpokenOfLinksAndSheets() {
    JsonNode range = Asked.get(URI.create(address + "/api/range")).json();
    assertThat(range.path("stations")).isNotEmpty();
    range.path("stations").forEach(station -> assertSaid(station.path("sentence")));
    Asked refused =
        Asked.send(
            "POST",
            URI.create(address + "/api/import"),
            "{\"what\":\"shots\",\"csv\":\"a,b\\n1,2\"}");
    assertThat(refused.status()).isEqualTo(400);
    assertSaid(refused.json().path("detail"));
  }

  @Test
  void isSpokenInWhatIsRefused() {
    for (String body :
        List.of(
            "{}",
            "no JSON",
            "{\"name\":\"\",\"state_on\":\"2026-05-01\",\"draw_weight_lb\":50,\"draw_length_in\":28}",
            "{\"name\":\"A\",\"state_on\":\"2026-05-01\",\"draw_weight_lb\":5000,\"draw_length_in\":28}")) {
      Asked refused = Asked.send("POST", URI.create(address + "/api/bows"), body);
      assertThat(refused.status()).isEqualTo(400);
      assertSaid(refused.json().path("detail"));
    }
    assertSaid(Asked.get(URI.create(address + "/api/nothing")).json().path("detail"));
  }

  @Test
  void isSpokenOnThePages() throws Exception {
    for (String path :
        List.of("/", "/gates.html", "/rack", "/arrows", "/sessions", "/plan", "/reach", "/data")) {
      String page =
          HttpClient.newHttpClient()
              .send(
                  HttpRequest.newBuilder(URI.create(address + path)).build(),
                  BodyHandlers.ofString())
              .body();
      assertThat(page).contains("«");
      assertThat(WORDS.matcher(HIDDEN.matcher(page).replaceAll("")).results())
          .extracting(words -> words.group(1).strip())
          .as(path)
          .allSatisfy(words -> assertThat(words).contains("«"));
    }
  }
}
