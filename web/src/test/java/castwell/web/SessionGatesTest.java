package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import castwell.web.cli.Castwell;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * What sessions tell of their gates, wherever it is told: clean ones, one with a butt that slows
 * tails by 1 % (6.1 mm of a spacing of 609.6 mm, by hand), and one whose gates stand 5 mm farther
 * apart than was entered.
 */
@Tag("slow")
@Timeout(300)
class SessionGatesTest {
  private static final String CLEAN = "2026-05-02";
  private static final String NEAR = "2026-05-09";
  private static final String LIGHT = "2026-05-10";
  private static final String DECIDED = "2026-05-12";
  private static final String APART = "2026-05-16";
  private static final double SPACING_M = 0.6096;

  @TempDir static Path folder;
  private static Path data;

  @BeforeAll
  static void shoot() throws IOException {
    data = folder.resolve("data");
    take(
        "bows",
        "bow,state_on,draw_weight_lb,draw_length_in\nElm,2026-04-01,50,27\nAsh,2026-04-01,50,27\nAsh,2026-05-05,50,27\n");
    take("arrows", "arrow,mass_gr,length_in\nPine,500,29\nReed,350,29\n");
    new MadeSession(0, SPACING_M, 46, CLEAN).replayInto(data, "Ash", "Pine");
    new MadeSession(0.01, SPACING_M, 46, NEAR).replayInto(data, "Ash", "Pine");
    new MadeSession(0, SPACING_M, 52, LIGHT).replayInto(data, "Ash", "Reed");
    new MadeSession(0.01, SPACING_M, 46, DECIDED).replayInto(data, "Elm", "Pine");
    new MadeSession(0, SPACING_M + 0.005, 46, APART).replayInto(data, "Ash", "Pine");
  }

  private static void take(String what, String csv) throws IOException {
    Path file = Files.writeString(folder.resolve(what + ".csv"), csv);
    assertThat(Castwell.run("import", "--data", data.toString(), "--what", what, file.toString()))
        .isZero();
  }

  private static String first(String... report) throws IOException {
    Path out = folder.resolve("report.json");
    List<String> all = new ArrayList<>(List.of("report"));
    all.addAll(List.of(report));
    all.addAll(List.of("--data", data.toString(), "--format", "json", "--out", out.toString()));
    assertThat(Castwell.run(all.toArray(String[]::new))).isZero();
    return JsonMapper.builder().build().readTree(out.toFile()).path("sentences").get(1).asText();
  }

  private static JsonNode gates(Served served, String session) {
    return Asked.get(served.at("/api/sessions/" + session + "/gates")).json();
  }

  private static String page(Served served, String path) throws IOException {
    HttpRequest request =
        HttpRequest.newBuilder(served.at(path)).header("Accept", "text/html").build();
    try {
      return HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void theApiTellsEachSessionsGates() {
    try (Served served = Served.withoutBoard(data, "range")) {
      JsonNode clean = gates(served, CLEAN);
      assertThat(clean.path("sentences")).isEmpty();
      assertThat(clean.path("front_over_tail").path("n").asInt()).isEqualTo(MadeSession.ARROWS);
      assertThat(clean.path("front_over_tail").path("tails_late_mm").asDouble())
          .isCloseTo(0, within(0.5));
      assertThat(clean.path("lengths")).hasSize(2);
      assertThat(clean.path("spacing").path("spacing_mm").asDouble()).isCloseTo(609.6, within(1.0));

      JsonNode near = gates(served, NEAR).path("front_over_tail");
      assertThat(near.path("named").asBoolean()).isTrue();
      assertThat(near.path("tails_late_mm").asDouble()).isCloseTo(6.1, within(0.5));
      assertThat(near.path("speed_percent").asDouble()).isCloseTo(0.5, within(0.05));

      JsonNode apart = gates(served, APART);
      assertThat(apart.path("front_over_tail").path("named").asBoolean()).isFalse();
      assertThat(apart.path("spacing").path("disagrees").asBoolean()).isTrue();
      assertThat(apart.path("spacing").path("spacing_mm").asDouble()).isCloseTo(614.6, within(1.0));
      assertThat(Asked.get(served.at("/api/sessions/never/gates")).status()).isEqualTo(404);
    }
  }

  @Test
  void thePagesShowTheFiguresAndOfferTheSpacing() throws IOException {
    try (Served served = Served.withoutBoard(data, "range")) {
      assertThat(page(served, "/sessions/" + NEAR))
          .contains("arrows the tails came 6.", "tails later than fronts", "id=\"gates-told\"");
      assertThat(page(served, "/sessions/" + CLEAN))
          .contains("spacing, by arrows of known length")
          .doesNotContain("arrows the tails came");
      String calibration = page(served, "/calibration");
      assertThat(calibration)
          .contains("session " + APART + " the spacing is 61", "▲ That differs", "&amp;spacing=61");
      assertThat(page(served, "/calibration?spacing=614.2&spacing_u=1.5"))
          .contains("value=\"614.2\"", "<details open");
      assertThat(page(served, "/bows/Ash?state=2026-05-05")).contains("In session " + NEAR);
    }
  }

  private static double mean(Served served, String column) {
    JsonNode shots = Asked.get(served.at("/api/sessions/" + DECIDED + "/shots")).json();
    return StreamSupport.stream(shots.spliterator(), false)
        .mapToDouble(shot -> shot.path(column).asDouble())
        .average()
        .orElseThrow();
  }

  private static JsonNode decide(Served served, boolean fronts) {
    String path = "/api/sessions/" + DECIDED + "/fronts";
    String body = "{\"fronts_trusted\":%s}".formatted(fronts);
    return Asked.send("POST", served.at(path), body).json();
  }

  /** The fronts weren't slowed, and whatever the tails have a part in is slower. */
  @Test
  void aPersonDecidesWhichEndTellsTheSpeedsAndCanUndoThat() throws IOException {
    try (Served served = Served.withoutBoard(data, "range")) {
      double fronts = mean(served, "front_fps");
      assertThat(page(served, "/sessions/" + DECIDED)).contains("Until you decide");
      assertThat(decide(served, false).path("fronts_trusted").asBoolean(true)).isFalse();
      double both = mean(served, "speed_fps");
      assertThat(both).isLessThan(fronts * (1 - 0.001));
      assertThat(page(served, "/sessions/" + DECIDED))
          .contains("Fronts and tails are taken as they were seen");
      assertThat(decide(served, true).path("front_over_tail").path("named").asBoolean()).isTrue();
      assertThat(mean(served, "speed_fps")).isCloseTo(fronts, withinPercentage(0.02));
      assertThat(page(served, "/sessions/" + DECIDED)).contains("as was decided");
      decide(served, false);
      assertThat(mean(served, "speed_fps")).isCloseTo(both, within(1e-6));
    }
  }

  @Test
  void reportsThatUseASessionWithLateTailsSaySoAtOnce() throws IOException {
    String late = "arrows the tails came 6.";
    assertThat(first("session", NEAR)).contains(late);
    assertThat(first("session", CLEAN)).doesNotContain(late);
    assertThat(first("rework", "Ash", "--before", CLEAN, "--after", NEAR))
        .startsWith("In session " + NEAR)
        .contains(late);
    assertThat(first("bow", "Ash")).startsWith("In session " + NEAR);
    assertThat(first("bow", "Ash", "--state", "2026-04-01")).doesNotContain(late);
    assertThat(first("ranking")).startsWith("In session " + NEAR).contains(late);
  }
}
