package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What else was measured of a bow and an arrow, and what force draws it how far. */
class RackOverHttpTest {
  private static final String CURVE =
      """
      {"state_on": "%s", "points": [
        {"draw_length_in": 8, "draw_force_lb": 0},
        {"draw_length_in": 18, "draw_force_lb": 30, "let_down_lb": 28.5},
        {"draw_length_in": 27, "draw_force_lb": %d, "let_down_lb": null}]}""";
  private static final Map<String, Double> MEASURES =
      Map.of(
          "nock_to_nock_in", 66.25,
          "string_follow_in", -0.5,
          "brace_height_in", 6.0,
          "mass_lb", 1.25,
          "tip_width_mm", 12.0,
          "string_mass_gr", 90.0,
          "tiller_mm", -3.0,
          "tip_thickness_mm", 11.5);

  @TempDir static Path folder;
  private static Served served;

  @BeforeAll
  static void serve() {
    served = Served.withoutBoard(folder, "range");
    accepted("POST", "/api/bows", bow("Known", "2026-04-01", "52"));
    accepted("POST", "/api/bows/Known/states", bow("", "2026-05-01", "50"));
  }

  @AfterAll
  static void end() {
    served.close();
  }

  private static String bow(String name, String date, String weightLb) {
    String named = name.isEmpty() ? "" : "\"name\": \"%s\", ".formatted(name);
    return "{%s\"state_on\": \"%s\", \"draw_weight_lb\": %s, \"draw_length_in\": 27}"
        .formatted(named, date, weightLb);
  }

  private static void accepted(String method, String path, String body) {
    Asked asked = Asked.send(method, served.at(path), body);
    assertThat(asked.status()).as("%s", asked.json()).isBetween(200, 299);
  }

  private static JsonNode get(String path) {
    return Asked.get(served.at(path)).json();
  }

  private static JsonNode named(String path, String name) {
    return StreamSupport.stream(get(path).spliterator(), false)
        .filter(thing -> thing.path("name").asText().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aBowsMeasuresAreShownAsTheyWereSent() {
    StringBuilder body = new StringBuilder(bow("Rowan", "2026-04-01", "52"));
    body.setLength(body.length() - 1);
    MEASURES.forEach((field, value) -> body.append(", \"%s\": %s".formatted(field, value)));
    accepted("POST", "/api/bows", body + ", \"wood\": \" elm \"}");

    JsonNode shown = named("/api/bows", "Rowan");

    MEASURES.forEach(
        (field, value) ->
            assertThat(shown.path(field).asDouble()).as(field).isCloseTo(value, within(1e-9)));
    assertThat(shown.path("wood").asText()).isEqualTo("elm");
  }

  @Test
  void whatWasNotMeasuredIsNull() {
    JsonNode shown = named("/api/bows", "Known");
    assertThat(MEASURES.keySet())
        .allSatisfy(field -> assertThat(shown.get(field).isNull()).isTrue());
    assertThat(shown.get("wood").isNull()).isTrue();
  }

  @Test
  void anArrowsPointAndNoteAreShownAndBlankOnesAreNotKnown() {
    accepted(
        "POST",
        "/api/arrows",
        "{\"name\": \"Rush\", \"mass_gr\": 500, \"point\": \"field\", \"note\": \"a\"}");
    assertThat(named("/api/arrows", "Rush").path("point").asText()).isEqualTo("field");
    assertThat(named("/api/arrows", "Rush").path("note").asText()).isEqualTo("a");
    accepted("PUT", "/api/arrows/Rush", "{\"mass_gr\": 500, \"point\": \" \", \"note\": \"\"}");
    assertThat(named("/api/arrows", "Rush").get("point").isNull()).isTrue();
    assertThat(named("/api/arrows", "Rush").get("note").isNull()).isTrue();
  }

  @Test
  void aSpineIsShownWithWhatItWasTakenWith() {
    accepted("POST", "/api/arrows", "{\"name\": \"Usual\", \"mass_gr\": 500, \"spine_mil\": 500}");
    spine("Usual", 500, 28, 1.94);
    accepted(
        "PUT",
        "/api/arrows/Usual",
        "{\"mass_gr\": 500, \"spine_mil\": 620, \"spine_span_in\": 26, \"spine_weight_lb\": 2}");
    spine("Usual", 620, 26, 2);
    accepted("POST", "/api/arrows/Usual/weighings", "{\"mass_gr\": 501}");
    spine("Usual", 620, 26, 2);
    accepted("PUT", "/api/arrows/Usual", "{\"mass_gr\": 500, \"spine_span_in\": 26}");
    assertThat(named("/api/arrows", "Usual").get("spine_span_in").isNull()).isTrue();
  }

  private static void spine(String arrow, double mil, double spanIn, double weightLb) {
    JsonNode shown = named("/api/arrows", arrow);
    assertThat(shown.path("spine_mil").asDouble()).isCloseTo(mil, within(1e-9));
    assertThat(shown.path("spine_span_in").asDouble()).isCloseTo(spanIn, within(1e-9));
    assertThat(shown.path("spine_weight_lb").asDouble()).isCloseTo(weightLb, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "spine_mil": 5                           | An arrow's spine lies between 50 and 3000 mil, not at 5
          "spine_mil": 500, "spine_span_in": 280   | The span of an arrow's spine lies between 10 and 40 in
          "spine_mil": 500, "spine_weight_lb": 194 | The weight of an arrow's spine lies between 1 and 10 lb
          """)
  void aSpineThatNoArrowHasIsRefused(String fields, String told) {
    refused(
        "/api/arrows", "{\"name\": \"Odd\", \"mass_gr\": 500, %s}".formatted(fields), 400, told);
    assertThat(get("/api/arrows").findValuesAsText("name")).doesNotContain("Odd");
  }

  @Test
  void aCurveBelongsToTheStateItWasMeasuredOf() {
    accepted("POST", "/api/bows/Known/force-draw", CURVE.formatted("2026-04-01", 52));
    accepted("POST", "/api/bows/Known/force-draw", CURVE.formatted("2026-05-01", 49));
    accepted("POST", "/api/bows/Known/force-draw", CURVE.formatted("2026-05-01", 50));

    JsonNode before = get("/api/bows/Known/force-draw?state_on=2026-04-01");
    JsonNode now = get("/api/bows/Known/force-draw");

    assertThat(before.path("state_on").asText()).isEqualTo("2026-04-01");
    assertThat(before.path("points").get(2).path("draw_force_lb").asDouble())
        .isCloseTo(52, within(1e-9));
    assertThat(now.path("bow").asText()).isEqualTo("Known");
    assertThat(now.path("state_on").asText()).isEqualTo("2026-05-01");
    assertThat(now.path("points")).hasSize(3);
    JsonNode point = now.path("points").get(1);
    assertThat(point.path("draw_length_in").asDouble()).isCloseTo(18, within(1e-9));
    assertThat(point.path("let_down_lb").asDouble()).isCloseTo(28.5, within(1e-9));
    assertThat(now.path("points").get(2).path("draw_force_lb").asDouble())
        .isCloseTo(50, within(1e-9));
    assertThat(now.path("points").get(2).get("let_down_lb").isNull()).isTrue();
  }

  @Test
  void aBowThatWasNeverDrawnOnAScaleHasNoPoints() {
    accepted("POST", "/api/bows", bow("Idle", "2026-04-01", "40"));
    assertThat(get("/api/bows/Idle/force-draw").path("points")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          [[8,0],[8,5],[27,50]]                  | Point 2, at 8 in, isn't longer
          [[8,0],[18,30],[17,50]]                | Point 3, at 17 in, isn't longer
          [[8,0],[27,50]]                        | three points
          []                                     | three points
          [[8,0],[18,-1],[27,50]]                | draw force
          [[8,0],[18,30],[27,300]]               | draw force
          [[8,0],[18,30,-2],[27,50]]             | let-down force
          [[1,0],[18,30],[27,50]]                | draw length
          [[8,0],[18,30],[99,50]]                | draw length
          """)
  void aCurveThatCantBeIsRefused(String points, String told) {
    String objects =
        points
            .replaceAll("\\[([-\\d]+),([-\\d]+)\\]", "{\"draw_length_in\":$1,\"draw_force_lb\":$2}")
            .replaceAll(
                "\\[([-\\d]+),([-\\d]+),([-\\d]+)\\]",
                "{\"draw_length_in\":$1,\"draw_force_lb\":$2,\"let_down_lb\":$3}");
    refused("/api/bows/Known/force-draw", "{\"points\":" + objects + "}", 400, told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          /api/bows/Nobody/force-draw | {"points":[]}                          | 404 | no bow named Nobody
          /api/bows/Known/force-draw  | {}                                     | 400 | "points"
          /api/bows/Known/force-draw  | {"points":{}}                          | 400 | "points"
          /api/bows/Known/force-draw  | {"points":[1]}                         | 400 | object
          /api/bows/Known/force-draw  | {"points":[{"draw_length_cm":70}]}     | 400 | draw_length_cm
          /api/bows/Known/force-draw  | {"points":[{"draw_length_in":8}]}      | 400 | "draw_force_lb" is missing
          /api/bows/Known/force-draw  | {"points":[],"state_on":"May"}         | 400 | state_on
          /api/arrows | {"name":"A","mass_gr":500,"point":125}                 | 400 | "point"
          """)
  void whatCantBeReadIsRefused(String path, String body, int status, String told) {
    refused(path, body, status, told);
  }

  @ParameterizedTest
  @CsvSource({
    "nock_to_nock_in,6600",
    "string_follow_in,66",
    "brace_height_in,0",
    "mass_lb,-1",
    "tip_width_mm,1200",
    "string_mass_gr,0",
    "tiller_mm,51",
    "tip_thickness_mm,1",
    "wood,7"
  })
  void aMeasureThatNoBowHasIsRefused(String field, String value) {
    String body = bow("Wild", "2026-04-01", "52");
    refused(
        "/api/bows",
        body.substring(0, body.length() - 1) + ", \"%s\": %s}".formatted(field, value),
        400,
        "");
    assertThat(get("/api/bows").findValuesAsText("name")).doesNotContain("Wild");
  }

  private static void refused(String path, String body, int status, String told) {
    Asked asked = Asked.send("POST", served.at(path), body);
    assertThat(asked.status()).as("%s", asked.json()).isEqualTo(status);
    assertThat(asked.contentType()).startsWith("application/problem+json");
    assertThat(asked.detail()).contains(told).endsWith(".");
  }
}
