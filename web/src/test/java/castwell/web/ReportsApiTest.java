package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The same reports over the API, and how it says no (problem+json: RFC 9457). */
class ReportsApiTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  @TempDir static Path folder;
  private static Served served;

  @BeforeAll
  static void serve() {
    served = Served.withoutBoard(folder, "range");
    send("bows", "bow,state_on,draw_weight_lb,draw_length_in\nAsh,2026-04-01,50,27\n");
    send("arrows", "arrow,mass_gr\nlight,400\nmiddle,500\nheavy,650\n");
    StringBuilder shots = new StringBuilder("bow,arrow,speed_fps,session\n");
    for (int i = 0; i < 5; i++) {
      shots.append("Ash,light,%s,2026-05-04\n".formatted(156.1 + 0.4 * i));
      shots.append("Ash,middle,%s,2026-05-04\n".formatted(143.5 + 0.3 * (i * i % 5)));
      shots.append("Ash,heavy,%s,2026-05-04\n".formatted(129.7 + 0.3 * i));
    }
    shots.append("Ash,heavy,100,2026-05-04\n");
    send("shots", shots.toString());
  }

  @AfterAll
  static void end() {
    served.close();
  }

  private static void send(String what, String csv) {
    ObjectNode body = JSON.createObjectNode().put("what", what).put("csv", csv);
    Asked answer = Asked.send("POST", served.at("/api/import"), body.toString());
    assertThat(answer.status()).as(answer.detail()).isEqualTo(201);
  }

  private static JsonNode get(String path) {
    Asked answer = Asked.get(served.at(path));
    assertThat(answer.status()).as(answer.detail()).isEqualTo(200);
    return answer.json();
  }

  @Test
  void oneBowWithItsPages() {
    JsonNode bow = get("/api/reports/bow/Ash?gpp=9");

    assertThat(bow.path("cast").path("gpp").asDouble()).isEqualTo(9);
    assertThat(bow.path("cells")).hasSize(3);
    assertThat(bow.path("any_day").path("sessions").asInt()).isEqualTo(1);
    assertThat(get("/api/reports/ranking").path("ranking")).hasSize(1);
    assertThat(get("/api/reports/reach?energy_ftlbf=20").path("reach")).hasSize(1);
    assertThat(get("/api/reports/session").path("session").asText()).isEqualTo("2026-05-04");
    assertThat(get("/api/reports/plan/Ash").path("order").isArray()).isTrue();
  }

  @Test
  void aStrayIsSetAsideUntilAPersonBringsItBack() {
    JsonNode stray = get("/api/reports/session/2026-05-04").path("strays").get(0);
    assertThat(stray.path("set_aside").asBoolean()).isTrue();
    assertThat(stray.path("chance").asDouble()).isBetween(0.99, 1.0);
    String id = stray.path("shot_id").asText();
    assertThat(heavy().path("n").asInt()).isEqualTo(5);

    String decision = "{\"counts\": true, \"reason\": \"a good loose\"}";
    Asked.send("POST", served.at("/api/shots/" + id + "/decision"), decision);

    assertThat(heavy().path("n").asInt()).isEqualTo(6);
    assertThat(get("/api/reports/session/2026-05-04").path("strays")).isEmpty();
  }

  private static JsonNode heavy() {
    return get("/api/reports/bow/Ash").path("cells").get(2);
  }

  @ParameterizedTest
  @CsvSource({
    "/api/reports/bow/Oak, 404, There is no bow named Oak",
    "/api/reports/bow/Ash?gpp=x, 400, 'is a finite number, not x'",
    "/api/reports/bow/Ash?gpp=-1, 400, lie above 0",
    "/api/reports/reach, 400, Say what to reach in one way",
    "/api/reports/rework/Ash?before=2026-05-04, 400, is missing",
    "/api/reports/rework/Ash?before=2020-01-01&after=2026-05-04, 404, its sessions are 2026-05-04",
    "/api/reports/plan/Ash?change_fps=0, 400, can't be 0",
    "/api/reports/session/never, 404, There is no session named never",
  })
  void whatCantBeAnsweredIsAProblem(String path, int status, String detail) {
    Asked answer = Asked.get(served.at(path));

    assertThat(answer.status()).isEqualTo(status);
    assertThat(answer.contentType()).startsWith("application/problem+json");
    assertThat(answer.detail()).contains(detail);
  }
}
