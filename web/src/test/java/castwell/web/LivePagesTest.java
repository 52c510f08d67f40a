package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.web.text.Texts;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages that scripts fill in, and the texts that scripts say. */
@Tag("browser")
@Timeout(300)
class LivePagesTest {
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static final Map<String, String> TEXTS = Texts.english().all("live.");
  private static final List<List<Object>> ARGUMENTS =
      List.of(List.of(1, 2, 1, 0, "x"), List.of("$1 {0} \\ $&", 1, 2, 5, "1"));

  @TempDir static Path folder;
  private static Served served;

  @BeforeAll
  static void open() {
    served = Served.withoutBoard(folder, "range");
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static HttpResponse<String> ask(String method, String path, String... headers)
      throws IOException, InterruptedException {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(served.at(path)).method(method, BodyPublishers.noBody());
    for (int i = 0; i < headers.length; i += 2) {
      request.header(headers[i], headers[i + 1]);
    }
    return CLIENT.send(request.build(), BodyHandlers.ofString());
  }

  private static String header(HttpResponse<String> answer, String name) {
    return answer.headers().firstValue(name).orElse("");
  }

  /** RFC 9110: 9.3.2 (HEAD), 13.1.2 (If-None-Match, compared weakly), 15.4.5 (304). */
  @ParameterizedTest
  @ValueSource(strings = {"/", "/gates.html", "/enter", "/texts.js", "/rules.js"})
  void aPageIsKeptUntilItChanges(String path) throws IOException, InterruptedException {
    HttpResponse<String> whole = ask("GET", path);
    String tag = header(whole, "ETag");
    assertThat(whole.statusCode()).isEqualTo(200);
    assertThat(whole.body()).isNotEmpty();
    assertThat(tag).startsWith("W/\"");
    assertThat(header(whole, "Cache-Control")).isEqualTo("max-age=0");
    assertThat(header(whole, "Content-Security-Policy")).contains("default-src 'none'");

    for (String kept : List.of(tag, "\"other\", " + tag)) {
      HttpResponse<String> same = ask("GET", path, "If-None-Match", kept);
      assertThat(same.statusCode()).isEqualTo(304);
      assertThat(same.body()).isEmpty();
      assertThat(header(same, "ETag")).isEqualTo(tag);
    }
    assertThat(ask("GET", path, "If-None-Match", "W/\"other\"").statusCode()).isEqualTo(200);

    HttpResponse<String> head = ask("HEAD", path);
    assertThat(head.statusCode()).isEqualTo(200);
    assertThat(head.body()).isEmpty();
    for (String name : List.of("ETag", "Content-Type", "Cache-Control")) {
      assertThat(header(head, name)).as(name).isEqualTo(header(whole, name));
    }
  }

  @Test
  void pagesAreInTheTextsLanguage() throws IOException, InterruptedException {
    for (String path : List.of("/", "/gates.html", "/enter")) {
      assertThat(ask("GET", path).body())
          .startsWith("<!doctype html>\n<html lang=\"en\">")
          .doesNotContain("${", "texts.say");
    }
  }

  @Test
  void theScriptsTextsAreThoseOfTheFile() throws IOException, InterruptedException {
    HttpResponse<String> answer = ask("GET", "/texts.js");
    assertThat(header(answer, "Content-Type")).startsWith("text/javascript");
    String json = answer.body().replaceFirst("^export default (.*);\n$", "$1");
    Object read = JsonMapper.builder().build().readValue(json, Object.class);
    assertThat(read).isEqualTo(TEXTS);
  }

  /** The browser puts arguments in as the program does. */
  @Test
  void aScriptSaysATextAsTheProgramDoes() {
    Map<String, List<String>> expected = new TreeMap<>();
    for (String key : TEXTS.keySet()) {
      List<String> said = new ArrayList<>();
      ARGUMENTS.forEach(given -> said.add(Texts.english().say(key, given.toArray())));
      expected.put(key, said);
    }
    try (Browser browser = new Browser();
        Visit visit = Visit.onAPhone(browser, served)) {
      Object said =
          visit
              .page()
              .evaluate(
                  """
                  async ([keys, all]) => {
                    const {text} = await import('/text.js');
                    return Object.fromEntries(keys.map((key) => [key, all.map((given) => text(key, ...given))]));
                  }""",
                  List.of(List.copyOf(TEXTS.keySet()), ARGUMENTS));
      assertThat(said).isEqualTo(expected);
    }
  }
}
