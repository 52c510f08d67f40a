package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.io.InputStream;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The API's own document, against OpenAPI, against what is answered, and against who is let in. */
@Timeout(120)
class ApiDocumentTest {
  private static final String BOWS =
      """
      bow,state_on,draw_weight_lb,draw_length_in,done
      Elm,2026-04-01,50,27,
      Elm,2026-05-05,49,27,tips lightened
      Yew,2026-04-01,45,27,
      """;

  @TempDir static Path folder;
  private static Served served;
  private static JsonNode document;

  @BeforeAll
  static void serve() {
    Recordings.replayInto(folder);
    served = Served.forOthers(folder, "");
    Asked asked = send("GET", "/api/openapi.json", "");
    assertThat(asked.status()).isEqualTo(200);
    assertThat(asked.contentType()).startsWith("application/json");
    document = asked.json();
  }

  @AfterAll
  static void end() {
    served.close();
  }

  private static HttpRequest.Builder request(String method, String path, String body) {
    return HttpRequest.newBuilder(served.at(path))
        .method(method, body.isEmpty() ? BodyPublishers.noBody() : BodyPublishers.ofString(body))
        .header("Content-Type", "application/json");
  }

  private static Asked send(String method, String path, String body) {
    return Asked.send(
        request(method, path, body).header("Authorization", "Bearer " + served.key()));
  }

  @Test
  void itIsAsOpenApiAsks() throws Exception {
    try (InputStream in = ApiDocumentTest.class.getResourceAsStream("openapi-3.1.schema.json")) {
      JsonNode schema = JsonMapper.builder().build().readTree(in);
      assertThat(
              JsonSchemaFactory.getInstance(VersionFlag.V202012)
                  .getSchema(schema)
                  .validate(document))
          .isEmpty();
    }
    SwaggerParseResult read = new OpenAPIV3Parser().readContents(document.toString(), null, null);
    assertThat(read.getMessages()).isEmpty();
    assertThat(read.getOpenAPI().getPaths()).hasSameSizeAs(document.path("paths"));
  }

  private static Set<String> routes() {
    Set<String> routes = new LinkedHashSet<>();
    for (Map.Entry<String, JsonNode> path : document.path("paths").properties()) {
      path.getValue().fieldNames().forEachRemaining(verb -> routes.add(verb + " " + path.getKey()));
    }
    return routes;
  }

  /** Each route is called well, and wrongly where it can be; none is forgotten. */
  @Test
  void everyRouteAnswersAsItSays() {
    ApiCalls calls = new ApiCalls(document, ApiDocumentTest::send);
    rack(calls);
    sheets(calls);
    range(calls);
    shots(calls);
    plans(calls);
    reports(calls);
    rest(calls);
    Set<String> expected = routes();
    expected.remove("get /api/live"); // it goes on for ever: read below
    assertThat(calls.well()).containsExactlyInAnyOrderElementsOf(expected);
    assertThat(calls.refused()).hasSizeGreaterThan(expected.size() / 2);
  }

  private static void rack(ApiCalls calls) {
    String bow = "{\"name\":\"Ash\",\"draw_weight_lb\":50,\"draw_length_in\":27,\"mass_lb\":1.25}";
    calls.well("POST", "/api/bows", bow);
    calls.refused(409, "POST", "/api/bows", bow);
    calls.refused(400, "POST", "/api/bows", "{}");
    calls.get("/api/bows");
    String state = "{\"draw_weight_lb\":48,\"draw_length_in\":27,\"done\":\"tips\"}";
    calls.well("POST", "/api/bows/{name}/states", state, "Ash");
    calls.refused(404, "POST", "/api/bows/{name}/states", state, "Oak");
    String curve =
        "{\"points\":[{\"draw_length_in\":8,\"draw_force_lb\":0},"
            + "{\"draw_length_in\":18,\"draw_force_lb\":30},"
            + "{\"draw_length_in\":27,\"draw_force_lb\":48,\"let_down_lb\":null}]}";
    calls.well("POST", "/api/bows/{name}/force-draw", curve, "Ash");
    calls.refused(400, "POST", "/api/bows/{name}/force-draw", "{\"points\":1}", "Ash");
    calls.get("/api/bows/{name}/force-draw", "Ash");
    calls.refused(404, "GET", "/api/bows/{name}/force-draw", "", "Oak");
    calls.well("POST", "/api/bows/{name}/retired", "{\"retired\":true}", "Ash");
    calls.well("POST", "/api/bows/{name}/retired", "{\"retired\":false}", "Ash");
    calls.refused(400, "POST", "/api/bows/{name}/retired", "{\"retired\":null}", "Ash");
    String arrow = "{\"name\":\"light\",\"mass_gr\":400,\"diameter_in\":0.34}";
    calls.well("POST", "/api/arrows", arrow);
    calls.refused(409, "POST", "/api/arrows", arrow);
    calls.well("PUT", "/api/arrows/{name}", "{\"mass_gr\":400,\"point\":\"field\"}", "light");
    calls.refused(404, "PUT", "/api/arrows/{name}", "{\"mass_gr\":400}", "none");
    calls.get("/api/arrows");
    calls.well("POST", "/api/arrows/{name}/weighings", "{\"mass_gr\":401}", "light");
    calls.refused(400, "POST", "/api/arrows/{name}/weighings", "{\"mass_gr\":0}", "light");
    JsonNode weighings = calls.get("/api/arrows/{name}/weighings", "light");
    calls.refused(404, "GET", "/api/arrows/{name}/weighings", "", "none");
    long id = weighings.path(0).path("id").asLong();
    String aside = "{\"set_aside\":true,\"why\":\"wet\"}";
    calls.well("POST", "/api/arrows/{name}/weighings/{id}", aside, "light", id);
    calls.refused(400, "POST", "/api/arrows/{name}/weighings/{id}", aside, "light", "x");
    calls.well("POST", "/api/arrows/{name}/retired", "{\"retired\":false}", "light");
    calls.refused(404, "POST", "/api/arrows/{name}/retired", "{\"retired\":true}", "none");
  }

  private static String sheet(String what, String csv) {
    ObjectNode sheet = JsonMapper.builder().build().createObjectNode();
    return sheet.put("what", what).put("csv", csv).toString();
  }

  /** Two outings of two bows, with a rework of one between them. */
  private static void sheets(ApiCalls calls) {
    calls.well("POST", "/api/import", sheet("bows", BOWS));
    calls.well("POST", "/api/import", sheet("arrows", "arrow,mass_gr\nmiddle,500\nheavy,650\n"));
    StringBuilder shots = new StringBuilder("bow,arrow,speed_fps,session\n");
    for (int i = 0; i < 5; i++) {
      for (String day : List.of("2026-05-04", "2026-05-06")) {
        shots.append("Elm,light,%s,%s\n".formatted(156.1 + 0.4 * i, day));
        shots.append("Elm,middle,%s,%s\n".formatted(143.5 + 0.3 * (i * i % 5), day));
        shots.append("Elm,heavy,%s,%s\n".formatted(129.7 + 0.3 * i, day));
        shots.append("Yew,light,%s,%s\n".formatted(150.1 + 0.4 * i, day));
        shots.append("Yew,heavy,%s,%s\n".formatted(125.7 + 0.3 * i, day));
      }
    }
    shots.append("Elm,heavy,100,2026-05-04\n");
    calls.well("POST", "/api/import/preview", sheet("shots", shots.toString()));
    calls.well("POST", "/api/import", sheet("shots", shots.toString()));
    String bad = sheet("shots", "bow,arrow,speed_fps\nElm,light,fast\n");
    calls.well("POST", "/api/import/preview", bad);
    calls.refused(400, "POST", "/api/import", bad);
    calls.refused(400, "POST", "/api/import/preview", sheet("shoes", "a\n"));
  }

  private static void range(ApiCalls calls) {
    calls.get("/api/range");
    calls.refused(404, "GET", "/api/range?station=nowhere", "");
    calls.get("/api/stations");
    String tags = "{\"station\":\"range\",\"bow\":\"Elm\",\"arrow\":\"light\"}";
    calls.well("PUT", "/api/tags", tags);
    calls.well("PUT", "/api/tags", "{\"station\":\"range\",\"bow\":null}");
    calls.refused(404, "PUT", "/api/tags", tags.replace("Elm", "Oak"));
    calls.get("/api/sessions");
    calls.well("POST", "/api/sessions", "{\"station\":\"range\"}");
    calls.refused(404, "POST", "/api/sessions", "{\"station\":\"nowhere\"}");
    calls.well("PUT", "/api/sessions/{name}/note", "{\"note\":\"wind\"}", "2026-05-04");
    calls.refused(404, "PUT", "/api/sessions/{name}/note", "{\"note\":\"wind\"}", "never");
    calls.get("/api/sessions/{name}/gates", "2026-05-02");
    calls.get("/api/sessions/{name}/gates", "2026-05-04");
    calls.refused(404, "GET", "/api/sessions/{name}/gates", "", "never");
    String fronts = "/api/sessions/{name}/fronts";
    calls.well("POST", fronts, "{\"fronts_trusted\":true}", "2026-05-02");
    calls.refused(404, "POST", fronts, "{\"fronts_trusted\":true}", "never");
    calls.refused(400, "POST", fronts, "{}", "2026-05-02");
    String gates = "/api/stations/{station}/calibrations";
    calls.get(gates, "range");
    calls.well("POST", gates, "{\"spacing_mm\":1000.5,\"oscillator\":\"resonator\"}", "range");
    calls.refused(400, "POST", gates, "{\"spacing_mm\":-1}", "range");
    calls.get("/api/stations/{station}/budget", "range");
    calls.refused(404, "GET", "/api/stations/{station}/budget", "", "nowhere");
    calls.well(
        "POST", "/api/stations/{station}/readings", "{\"speed_fps\":150,\"note\":\"\"}", "range");
    calls.refused(400, "POST", "/api/stations/{station}/readings", "{}", "range");
    calls.get("/api/range");
  }

  private static void shots(ApiCalls calls) {
    JsonNode shots = calls.get("/api/sessions/{name}/shots", "2026-05-02");
    calls.get("/api/sessions/{name}/shots", "2026-05-04");
    String id = shots.path(0).path("shot_id").asText();
    calls.get("/api/shots/{shot_id}", id);
    calls.refused(404, "GET", "/api/shots/{shot_id}", "", "none.1.2");
    String decision = "/api/shots/{shot_id}/decision";
    calls.well("POST", decision, "{\"counts\":false,\"reason\":\"short draw\"}", id);
    calls.well("POST", decision, "{\"counts\":null}", id);
    calls.refused(400, "POST", decision, "{\"reason\":\"none\"}", id);
    String tags = "{\"bow\":\"Elm\",\"arrow\":\"light\",\"why\":\"forgot\"}";
    calls.well("POST", "/api/shots/{shot_id}/tags", tags, id);
    calls.refused(404, "POST", "/api/shots/{shot_id}/tags", "{\"bow\":\"Oak\"}", id);
    String several = "{\"shots\":[{\"shot_id\":\"%s\",\"bow\":\"Elm\"}]}".formatted(id);
    calls.well("POST", "/api/shots/tags", several);
    calls.refused(400, "POST", "/api/shots/tags", "{\"shots\":[1]}");
    calls.get("/api/shots/{shot_id}", id);
  }

  private static void plans(ApiCalls calls) {
    String turns =
        "{\"station\":\"range\",\"turns\":[{\"bow\":\"Elm\",\"arrow\":\"light\"},"
            + "{\"bow\":\"Yew\",\"arrow\":\"heavy\"}]}";
    long plan = calls.well("POST", "/api/plans", turns).path("plan").asLong();
    String designed = "{\"station\":\"range\",\"from\":{\"bow\":\"Elm\",\"control\":[\"Yew\"]}}";
    calls.well("POST", "/api/plans", designed);
    calls.refused(400, "POST", "/api/plans", "{\"station\":\"range\"}");
    calls.well("POST", "/api/plans/{plan}/events", "{\"do\":\"start\"}", plan);
    calls.well("POST", "/api/plans/{plan}/events", "{\"do\":\"skip\"}", plan);
    calls.refused(400, "POST", "/api/plans/{plan}/events", "{\"do\":\"dance\"}", plan);
    calls.get("/api/plans/{plan}", plan);
    calls.refused(404, "GET", "/api/plans/{plan}", "", 999);
    calls.get("/api/plans?station=range");
    calls.refused(404, "GET", "/api/plans?station=nowhere", "");
    calls.get("/api/range");
  }

  private static void reports(ApiCalls calls) {
    calls.get("/api/reports/bow/{name}?gpp=9", "Elm");
    calls.get("/api/reports/bow/{name}", "Ash");
    calls.refused(404, "GET", "/api/reports/bow/{name}", "", "Oak");
    calls.get("/api/reports/ranking");
    calls.refused(400, "GET", "/api/reports/ranking?gpp=x", "");
    calls.get("/api/reports/reach?energy_ftlbf=20");
    calls.refused(400, "GET", "/api/reports/reach", "");
    String days = "?before=2026-05-04&after=2026-05-06";
    calls.get("/api/reports/rework/{name}" + days + "&control=Yew", "Elm");
    calls.get("/api/reports/rework/{name}" + days, "Elm");
    calls.refused(400, "GET", "/api/reports/rework/{name}", "", "Elm");
    calls.get("/api/reports/plan/{name}?change_fps=3&sd_fps=1", "Elm");
    calls.get("/api/reports/plan/{name}", "Elm");
    calls.refused(400, "GET", "/api/reports/plan/{name}?change_fps=0", "", "Elm");
    calls.get("/api/reports/session");
    calls.get("/api/reports/session/{name}", "2026-05-04");
    calls.refused(404, "GET", "/api/reports/session/{name}", "", "never");
  }

  private static void rest(ApiCalls calls) {
    calls.get("/api/health");
    calls.get("/api/health?station=range");
    calls.refused(404, "GET", "/api/health?station=nowhere", "");
    calls.get("/api/broker");
    calls.get("/metrics");
    calls.get("/api/openapi.json");
    routes().stream()
        .filter(route -> route.contains("/schemas/"))
        .forEach(route -> calls.get(route.substring("get ".length())));
    calls.get("/api/export/{file}", "shots.csv");
    calls.refused(404, "GET", "/api/export/{file}", "", "none.csv");
    calls.well("POST", "/api/backups", "{}");
    calls.refused(400, "POST", "/api/backups", "{\"x\":1}");
    calls.get("/api/admission");
    calls.well("POST", "/api/admission", "{\"key\":\"" + served.key() + "\"}");
    calls.refused(401, "POST", "/api/admission", "{\"key\":\"none\"}");
    calls.well("DELETE", "/api/admission", "{}");
  }

  @Test
  void theLiveFeedIsOfTheTypeThatIsTold() throws Exception {
    HttpRequest asked =
        request("GET", "/api/live", "").header("Authorization", "Bearer " + served.key()).build();
    HttpResponse<InputStream> answer =
        HttpClient.newHttpClient().send(asked, BodyHandlers.ofInputStream());
    try (InputStream events = answer.body()) {
      assertThat(events).isNotNull();
      assertThat(answer.statusCode()).isEqualTo(200);
      String type = answer.headers().firstValue("Content-Type").orElse("").split(";")[0];
      assertThat(document.at("/paths/~1api~1live/get/responses/200/content").has(type)).isTrue();
    }
  }

  /** Nobody gets in by a route that is told: each asks for the key, but the way in itself. */
  @Test
  void everyRouteAsksForTheKey() {
    for (String route : routes()) {
      String[] words = route.split(" ");
      String method = words[0].toUpperCase(Locale.ROOT);
      String path = words[1].replaceAll("\\{[a-z_]+}", "1");
      if (!path.equals("/api/admission")) {
        assertThat(Asked.send(request(method, path, "{}")).status()).as(route).isEqualTo(401);
      }
    }
  }
}
