package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.device.PseudoTerminal;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Health over HTTP, of the real daemon with a board on a pseudo-terminal. */
@Timeout(300)
class HealthApiTest {

  @TempDir Path folder;
  private final SaidByBoard said = new SaidByBoard();
  private PseudoTerminal board;
  private Served served;

  @BeforeEach
  void beat() {
    board = new PseudoTerminal();
    served = Served.at(folder, board.port());
    board.read(); // the board is asked who it is
    board.write(said.identity());
    for (int i = 0; i < 5; i++) {
      board.write(said.beat("CC", 812, 805));
    }
    Until.holds("the beats", () -> item("heartbeat", "well"));
  }

  @AfterEach
  void end() {
    served.close();
    board.close();
  }

  private JsonNode health() {
    return Asked.get(served.at("/api/health?station=range")).json();
  }

  /** A host that is slow for three seconds would otherwise take the board for silent. */
  private JsonNode whileItBeats() {
    AtomicReference<JsonNode> health = new AtomicReference<>();
    Until.holds(
        "a board that beats",
        () -> {
          board.write(said.beat("CC", 812, 805));
          health.set(health());
          return !health.get().path("level").asText().equals("bad");
        });
    return health.get();
  }

  private boolean item(String name, String level) {
    return StreamSupport.stream(health().path("items").spliterator(), false)
        .anyMatch(
            item ->
                item.path("name").asText().equals(name)
                    && item.path("level").asText().equals(level));
  }

  private HttpResponse<String> metrics(String accept) throws Exception {
    HttpRequest.Builder request = HttpRequest.newBuilder(served.at("/metrics"));
    if (!accept.isEmpty()) {
      request.header("Accept", accept);
    }
    return HttpClient.newHttpClient().send(request.build(), BodyHandlers.ofString());
  }

  @Test
  void everyItemSaysHowItIsAndWhatToDo() {
    JsonNode health = whileItBeats();
    assertThat(health.path("station").asText()).isEqualTo("range");
    assertThat(health.path("level").asText()).isEqualTo("can't tell"); // no history yet
    assertThat(health.path("items"))
        .hasSizeGreaterThan(10)
        .allSatisfy(
            item -> {
              assertThat(item.path("level").asText()).isIn("well", "can't tell");
              assertThat(item.path("sentence").asText()).endsWith(".");
              assertThat(item.path("remedy").asText()).endsWith(".");
            });
    JsonNode all = Asked.get(served.at("/api/health")).json();
    assertThat(all.path("stations").path(0).path("station").asText()).isEqualTo("range");
    assertThat(all.path("computer").path("items")).hasSize(3);
    assertThat(Asked.get(served.at("/api/health?station=meadow")).detail())
        .isEqualTo("There is no station named meadow.");
  }

  @Test
  void aPulledCableIsBad() {
    board.close();
    Until.holds("the port", () -> item("port", "bad") && item("light A", "can't tell"));
    assertThat(Asked.get(served.at("/api/health")).json().path("level").asText()).isEqualTo("bad");
    board = new PseudoTerminal();
  }

  @Test
  void lightIsToldToWhomAskedForIt() throws Exception {
    long last = served.store().read(t -> t.feed().last());
    try (FeedReader aligning = FeedReader.after(served.at("/api/live"), last, "&light=1");
        FeedReader watching = FeedReader.after(served.at("/api/live"), last)) {
      served.commands().beginSession("range", "test");
      aligning.anyOf("refresh"); // it is being served by now
      watching.anyOf("refresh");
      board.write(said.beat("BC", 140, 805));
      FeedReader.Event light = aligning.anyOf("light");
      assertThat(light.id()).isEmpty(); // nothing to resume from
      assertThat(light.data().path("station").asText()).isEqualTo("range");
      assertThat(light.data().path("light_a").asInt()).isEqualTo(140);
      assertThat(light.data().path("gate_a").asText()).isEqualTo("blocked");
      assertThat(light.data().path("gate_b").asText()).isEqualTo("clear");
      served.commands().beginSession("range", "test");
      assertThat(watching.upTo("refresh")).doesNotContain("light").contains("link");
    }
  }

  @Test
  void metricsAreOpenMetricsAsItsSpecificationSays() throws Exception {
    whileItBeats();
    HttpResponse<String> answer = metrics("");
    assertThat(answer.headers().firstValue("Content-Type").orElseThrow())
        .startsWith("application/openmetrics-text")
        .contains("version=1.0.0");
    OpenMetricsText text = OpenMetricsText.parsed(answer.body());
    assertThat(text.value("castwell_light_ratio{gate=\"A\",station=\"range\"}"))
        .isEqualTo(812 / 1023.0);
    assertThat(text.value("castwell_supply_volts{station=\"range\"}")).isEqualTo(5.012);
    assertThat(text.value("castwell_chip_celsius{station=\"range\"}")).isEqualTo(21.5);
    assertThat(text.value("castwell_board_edges_total{station=\"range\"}")).isEqualTo(12);
    assertThat(text.value("castwell_link{station=\"range\",castwell_link=\"online\"}"))
        .isEqualTo(1);
    assertThat(text.value("castwell_disk_free_bytes")).isPositive();
  }

  /** RFC 9110, 12.5.1; the second is what Prometheus sends, from memory. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "*/*                                                                       | application/openmetrics-text",
        "application/openmetrics-text;version=1.0.0;q=0.5,text/plain;q=0.3,*/*;q=0.1 | application/openmetrics-text",
        "text/plain                                                                | text/plain",
        "text/plain;version=0.0.4, */*;q=0.1                                       | text/plain",
        "application/openmetrics-text;q=0, text/*                                  | text/plain",
        "text/html, application/xhtml+xml                                          | application/openmetrics-text",
        "text/plain;q=nonsense                                                     | application/openmetrics-text"
      })
  void theReaderChoosesTheFormat(String accept, String expected) throws Exception {
    HttpResponse<String> answer = metrics(accept);
    assertThat(answer.headers().firstValue("Content-Type").orElseThrow()).startsWith(expected);
    assertThat(answer.body().endsWith("# EOF\n"))
        .isEqualTo(expected.equals("application/openmetrics-text"));
  }
}
