package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is written over the API, and how it says no (problem+json: RFC 9457). */
class ApiTest {
  private static final String BOW =
      "{\"name\":\"%s\",\"draw_weight_lb\":52,\"draw_length_in\":27,\"done\":\"tillered\",\"state_on\":\"2026-04-01\"}";
  private static final String ARROW = "{\"name\":\"%s\",\"mass_gr\":500,\"diameter_in\":0.34375}";
  private static final String CALIBRATIONS = "/api/stations/clean-five/calibrations";

  @TempDir static Path folder;
  private static Served served;
  private static String shotId;

  @BeforeAll
  static void serveFiveShots() {
    Recordings.replayInto(folder);
    served = Served.withoutBoard(folder, Recordings.STATION);
    shotId = shots().get(0).path("shot_id").asText();
    ask("POST", "/api/bows", BOW.formatted("Known"));
    ask("POST", "/api/arrows", ARROW.formatted("Known"));
  }

  @AfterAll
  static void end() {
    served.close();
  }

  private static Asked ask(String method, String path, String body) {
    return Asked.send(method, served.at(path), body);
  }

  private static JsonNode get(String path) {
    Asked asked = Asked.get(served.at(path));
    assertThat(asked.status()).isEqualTo(200);
    return asked.json();
  }

  private static List<JsonNode> shots() {
    return list(get("/api/sessions/2026-05-02/shots"));
  }

  private static List<JsonNode> list(JsonNode array) {
    return StreamSupport.stream(array.spliterator(), false).toList();
  }

  private static JsonNode named(String path, String name) {
    return list(get(path)).stream()
        .filter(thing -> thing.path("name").asText().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aBowIsAddedAndItsStatesFollow() {
    Asked added = ask("POST", "/api/bows", BOW.formatted("Rowan"));
    assertThat(added.status()).isEqualTo(201);
    assertThat(added.json().path("name").asText()).isEqualTo("Rowan");
    JsonNode bow = named("/api/bows", "Rowan");
    assertThat(bow.path("draw_weight_lb").asDouble()).isCloseTo(52, within(1e-9));
    assertThat(bow.path("draw_length_in").asDouble()).isCloseTo(27, within(1e-9));
    assertThat(bow.path("done").asText()).isEqualTo("tillered");
    assertThat(bow.path("state_on").asText()).isEqualTo("2026-04-01");

    String lighter = "{\"draw_weight_lb\":50,\"draw_length_in\":27,\"done\":\"tips lightened\"}";
    assertThat(ask("POST", "/api/bows/Rowan/states", lighter).status()).isEqualTo(201);
    JsonNode after = named("/api/bows", "Rowan");
    assertThat(after.path("draw_weight_lb").asDouble()).isCloseTo(50, within(1e-9));
    assertThat(after.path("done").asText()).isEqualTo("tips lightened");
  }

  @Test
  void anyNameTakesANewState() {
    String name = "Yew/52 #1? 100%+é; \\..";
    assertThat(ask("POST", "/api/bows", BOW.formatted(name.replace("\\", "\\\\"))).status())
        .isEqualTo(201);
    String path = URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
    Asked state =
        ask(
            "POST",
            "/api/bows/" + path + "/states",
            "{\"draw_weight_lb\":48,\"draw_length_in\":27}");
    assertThat(state.status()).as("%s", state.json()).isEqualTo(201);
    assertThat(named("/api/bows", name).path("draw_weight_lb").asDouble())
        .isCloseTo(48, within(1e-9));
  }

  @Test
  void anArrowIsAddedAndMeasuredAnew() {
    Asked added = ask("POST", "/api/arrows", ARROW.formatted("Rush"));
    assertThat(added.status()).isEqualTo(201);
    assertThat(named("/api/arrows", "Rush").path("length_in").isNull()).isTrue();
    Asked entered =
        ask("PUT", "/api/arrows/Rush", "{\"mass_gr\":512.5,\"length_in\":30,\"diameter_in\":0.34}");
    assertThat(entered.status()).isEqualTo(200);
    assertThat(named("/api/arrows", "Rush").path("mass_gr").asDouble())
        .isCloseTo(512.5, within(1e-9));
    assertThat(named("/api/arrows", "Rush").path("length_in").asDouble())
        .isCloseTo(30, within(1e-9));
  }

  @Test
  void whoShootsIsToldWithGrainsPerPound() {
    String known = "{\"station\":\"clean-five\",\"bow\":\"Known\",\"arrow\":\"Known\"}";
    Asked tagged = ask("PUT", "/api/tags", known);
    assertThat(tagged.status()).isEqualTo(200);
    // 500 gr over 52 lb
    assertThat(tagged.json().path("grains_per_pound").asDouble())
        .isCloseTo(500.0 / 52, within(1e-9));
    Asked nobody = ask("PUT", "/api/tags", "{\"station\":\"clean-five\",\"bow\":null}");
    assertThat(nobody.json().path("bow").isNull()).isTrue();
    assertThat(nobody.json().path("grains_per_pound").isNull()).isTrue();
  }

  @Test
  void aShotIsSetAsideBroughtBackAndLeftToTheRules() {
    String path = "/api/shots/" + shotId + "/decision";
    Asked aside = ask("POST", path, "{\"counts\":false,\"reason\":\"short draw\"}");
    assertThat(aside.status()).isEqualTo(200);
    assertThat(aside.json().path("counts").booleanValue()).isFalse();
    assertThat(aside.json().path("reason").asText()).isEqualTo("Set aside: short draw.");
    assertThat(aside.json().path("judged_by").asText()).isEqualTo("person");
    Asked back = ask("POST", path, "{\"counts\":true,\"reason\":\"it was fine\"}");
    assertThat(back.json().path("counts").booleanValue()).isTrue();
    Asked rules = ask("POST", path, "{\"counts\":null,\"reason\":\"\"}");
    assertThat(rules.json().path("judged_by").asText()).isEqualTo("rule");
    assertThat(list(get("/api/shots/" + shotId).path("decisions")))
        .extracting(decision -> decision.path("decided").asText())
        .containsSubsequence("set aside", "brought back", "as judged");
  }

  @Test
  void aRetaggedShotCarriesItsArrowsEnergy() {
    String path = "/api/shots/" + shotId + "/tags";
    Asked tagged =
        ask("POST", path, "{\"bow\":\"Known\",\"arrow\":\"Known\",\"why\":\"forgot to choose\"}");
    assertThat(tagged.status()).isEqualTo(200);
    double fps = tagged.json().path("speed_fps").asDouble();
    // m v^2 / 2 and m v with the grain, pound, foot and standard gravity by their definitions
    assertThat(tagged.json().path("kinetic_energy_ftlbf").asDouble())
        .isCloseTo(500 * fps * fps / 450436.679790026, within(1e-9));
    assertThat(tagged.json().path("momentum_slug_fps").asDouble())
        .isCloseTo(500 * fps / 225218.339895013, within(1e-11));
    assertThat(list(get("/api/shots/" + shotId).path("tags")))
        .extracting(tagging -> tagging.path("why").asText())
        .contains("forgot to choose");
  }

  @Test
  void aSessionBeginsWhenAsked() {
    assertThat(ask("POST", "/api/sessions", "{\"station\":\"clean-five\"}").status())
        .isEqualTo(201);
    assertThat(list(get("/api/sessions"))).hasSizeGreaterThan(1);
  }

  @Test
  void aSpacingCorrectedAfterwardsChangesWhatItCoversAndForgetsNothing() {
    List<JsonNode> before = shots();
    String id = before.get(3).path("shot_id").asText();
    JsonNode edges = get("/api/shots/" + id).path("edges");
    double spacingMm = list(get(CALIBRATIONS)).get(0).path("spacing_mm").asDouble();
    String from = before.get(2).path("fired_at").asText();
    double corrected = spacingMm * 1.01;

    Asked entered =
        ask("POST", CALIBRATIONS, "{\"from\":\"%s\",\"spacing_mm\":%s}".formatted(from, corrected));

    assertThat(entered.status()).isEqualTo(201);
    assertThat(entered.json().path("shots_derived_anew").intValue()).isEqualTo(3);
    List<JsonNode> after = shots();
    for (int i = 0; i < 5; i++) {
      JsonNode figures =
          get("/api/shots/" + before.get(i).path("shot_id").asText()).path("figures");
      double tickRates =
          figures.get(figures.size() - 1).path("tick_rate_hz").asDouble()
              / figures.get(0).path("tick_rate_hz").asDouble();
      double ratio =
          after.get(i).path("speed_fps").asDouble() / before.get(i).path("speed_fps").asDouble();
      // v = d hz / ticks: the speed goes with the spacing, from the third shot on
      assertThat(ratio).isCloseTo(i < 2 ? 1 : 1.01 * tickRates, within(1e-12));
      assertThat(tickRates).isCloseTo(1, within(1e-6));
    }
    JsonNode whole = get("/api/shots/" + id);
    assertThat(whole.path("edges")).isEqualTo(edges);
    List<JsonNode> figures = list(whole.path("figures"));
    assertThat(figures)
        .extracting(f -> f.path("in_force").asBoolean())
        .containsExactly(false, true);
    assertThat(figures.get(0).path("speed_fps").asDouble())
        .isEqualTo(before.get(3).path("speed_fps").asDouble());
    assertThat(figures.get(0).path("spacing_mm").asDouble()).isCloseTo(spacingMm, within(1e-9));
    assertThat(figures.get(1).path("spacing_mm").asDouble()).isCloseTo(corrected, within(1e-9));
  }

  static Stream<Arguments> refusals() {
    String decision = "/api/shots/SHOT/decision";
    return Stream.of(
        arguments("PUT", "/api/tags", "{\"station\":\"clean-five\",\"bow\":\"Nobody\"}", 404),
        arguments("PUT", "/api/tags", "{\"station\":\"clean-five\",\"arrow\":\"Nobody\"}", 404),
        arguments("PUT", "/api/tags", "{\"station\":\"nowhere\"}", 404),
        arguments("PUT", "/api/tags", "{\"bow\":\"Known\"}", 400),
        arguments("POST", "/api/sessions", "{\"station\":\"nowhere\"}", 404),
        arguments("POST", "/api/shots/none.1.2/decision", "{\"counts\":null}", 404),
        arguments("POST", "/api/shots/none.1.2/tags", "{}", 404),
        arguments("POST", decision, "{\"counts\":false}", 400),
        arguments("POST", decision, "{\"counts\":false,\"reason\":\"  \"}", 400),
        arguments("POST", decision, "{\"reason\":\"no decision\"}", 400),
        arguments("POST", decision, "{\"counts\":\"no\",\"reason\":\"x\"}", 400),
        arguments("POST", decision, "{\"counts\":true,\"reason\":7}", 400),
        arguments(
            "POST", decision, "{\"counts\":true,\"reason\":\"" + "x".repeat(501) + "\"}", 400),
        arguments("POST", "/api/shots/SHOT/tags", "{\"bow\":\"Nobody\"}", 404),
        arguments("POST", "/api/bows", BOW.formatted("Known"), 409),
        arguments("POST", "/api/bows", BOW.formatted(" Known "), 409),
        arguments("POST", "/api/arrows", ARROW.formatted("Known"), 409),
        arguments("POST", "/api/bows", BOW.formatted(""), 400),
        arguments("POST", "/api/bows", BOW.formatted("x".repeat(61)), 400),
        arguments("POST", "/api/bows", BOW.formatted("two\\nlines"), 400),
        arguments("POST", "/api/bows", BOW.formatted("A").replace("52", "-52"), 400),
        arguments("POST", "/api/bows", BOW.formatted("A").replace("52", "0"), 400),
        arguments("POST", "/api/bows", BOW.formatted("A").replace(":27", ":2700"), 400),
        arguments("POST", "/api/bows", BOW.formatted("A").replace("2026-04-01", "May"), 400),
        arguments("POST", "/api/bows", BOW.formatted("A").replace("2026-04-01", "2026-02-30"), 400),
        arguments(
            "POST",
            "/api/bows",
            BOW.formatted("A").replace("2026-04-01", "+999999999-12-31T23:59:59Z"),
            400),
        arguments("POST", "/api/bows", "{\"name\":\"A\"}", 400),
        arguments(
            "POST",
            "/api/bows/Nobody/states",
            "{\"draw_weight_lb\":50,\"draw_length_in\":27}",
            404),
        arguments("PUT", "/api/arrows/Nobody", "{\"mass_gr\":500}", 404),
        arguments("POST", "/api/arrows", mass("-500"), 400),
        arguments("POST", "/api/arrows", mass("0"), 400),
        arguments("POST", "/api/arrows", mass("1e7"), 400),
        arguments("POST", "/api/arrows", mass("1e999"), 400),
        arguments("POST", "/api/arrows", mass("9".repeat(2000)), 400),
        arguments("POST", "/api/arrows", mass("NaN"), 400),
        arguments("POST", "/api/arrows", mass("\"NaN\""), 400),
        arguments("POST", "/api/arrows", mass("\"500\""), 400),
        arguments("POST", "/api/arrows", mass("true"), 400),
        arguments("POST", "/api/arrows", mass("[500]"), 400),
        arguments("POST", "/api/arrows", mass("null"), 400),
        arguments("POST", "/api/arrows", "{\"name\":\"A\",\"mass_gr\":1,\"mass_gr\":2}", 400),
        arguments("POST", "/api/arrows", "{\"name\":\"A\",\"mass_g\":30}", 400),
        arguments("POST", "/api/arrows", "[]", 400),
        arguments("POST", "/api/arrows", "", 400),
        arguments("POST", "/api/arrows", "name=A&mass_gr=500", 400),
        arguments("POST", "/api/arrows", "{\"name\":\"A\"", 400),
        arguments("POST", "/api/arrows", "[".repeat(60_000), 400),
        arguments("POST", CALIBRATIONS, "{\"spacing_mm\":0}", 400),
        arguments("POST", CALIBRATIONS, "{\"spacing_mm\":-609.6}", 400),
        arguments("POST", CALIBRATIONS, "{\"spacing_u_mm\":-1}", 400),
        arguments("POST", CALIBRATIONS, "{\"spacing_mm\":610,\"from\":\"yesterday\"}", 400),
        arguments("POST", CALIBRATIONS, "{\"oscillator\":\"pendulum\"}", 400),
        arguments("POST", "/api/stations/nowhere/calibrations", "{\"spacing_mm\":610}", 404),
        arguments("PUT", "/api/nothing", "{}", 404));
  }

  private static String mass(String text) {
    return "{\"name\":\"A\",\"mass_gr\":" + text + "}";
  }

  @ParameterizedTest(name = "{0} {1} {2}")
  @MethodSource("refusals")
  void whatCantBeIsRefusedInOneSentence(String method, String path, String body, int status) {
    assertRefused(ask(method, path.replace("SHOT", shotId), body), status);
  }

  private static void assertRefused(Asked asked, int status) {
    assertThat(asked.status()).as("%s", asked.json()).isEqualTo(status);
    assertThat(asked.contentType()).startsWith("application/problem+json");
    assertThat(asked.json().path("status").intValue()).isEqualTo(status);
    assertThat(asked.json().path("title").asText()).isNotEmpty();
    assertThat(asked.detail())
        .matches("[^\\n]{10,400}\\.")
        .doesNotContain("Exception", "castwell.");
  }

  @Test
  void aMegabyteOfJsonIsTooMuch() {
    String megabyte = mass("500, \"length_in\": " + " ".repeat(1 << 20) + "30");
    assertRefused(ask("POST", "/api/arrows", megabyte), 413);
    // The same without a Content-Length
    byte[] bytes = megabyte.getBytes(StandardCharsets.UTF_8);
    HttpRequest.Builder chunked =
        HttpRequest.newBuilder(served.at("/api/arrows"))
            .POST(BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(bytes)))
            .header("Content-Type", "application/json");
    assertRefused(Asked.send(chunked), 413);
  }

  @Test
  void whatAFormOnAnotherSiteCouldSendIsRefused() {
    for (String type : List.of("text/plain", "application/x-www-form-urlencoded", "")) {
      HttpRequest.Builder request =
          HttpRequest.newBuilder(served.at("/api/arrows"))
              .POST(BodyPublishers.ofString(ARROW.formatted("From a form")));
      assertRefused(
          Asked.send(type.isEmpty() ? request : request.header("Content-Type", type)), 415);
    }
  }

  @Test
  void whatIsAskedForInVainIsToldSo() {
    for (String path :
        List.of("/api/shots/none", "/api/nothing", "/nothing.html", "/api/range?station=nowhere")) {
      assertRefused(Asked.get(served.at(path)), 404);
    }
    assertRefused(Asked.get(served.at("/api/live?after=yesterday")), 400);
    assertRefused(
        Asked.send(HttpRequest.newBuilder(served.at("/api/live")).header("Last-Event-ID", "-1")),
        400);
  }
}
