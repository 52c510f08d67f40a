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

/** Sheets sent over the API, and how it says no (problem+json: RFC 9457). */
class ImportApiTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  @TempDir static Path folder;
  private static Served served;

  @BeforeAll
  static void serve() {
    served = Served.withoutBoard(folder, "range");
    send("bows", "bow,state_on,draw_weight_lb,draw_length_in\nAsh,2026-04-01,52,27\n");
    send("arrows", "arrow,mass_gr\nA1,500\n");
  }

  @AfterAll
  static void end() {
    served.close();
  }

  private static ObjectNode body(String what, String csv) {
    return JSON.createObjectNode().put("what", what).put("csv", csv);
  }

  private static Asked send(String what, String csv) {
    return send(body(what, csv));
  }

  private static Asked send(JsonNode body) {
    return Asked.send("POST", served.at("/api/import"), body.toString());
  }

  @Test
  void aSheetIsTakenInAndItsShotsAreShown() {
    ObjectNode body = body("shots", "bow,arrow,Speed,fired_at,colour\nAsh,A1,150,2026-05-04,red\n");
    body.putObject("map").put("Speed", "speed_fps");
    body.put("source", "paper.csv").put("own_fps", 1).put("common_percent", 2);
    Asked answer = send(body);
    assertThat(answer.status()).isEqualTo(201);
    assertThat(answer.json())
        .hasToString("{\"taken\":1,\"set_aside\":0,\"already\":0,\"not_read\":[\"colour\"]}");
    JsonNode shot = Asked.get(served.at("/api/sessions/2026-05-04/shots")).json().get(0);
    assertThat(shot.path("speed_fps").asDouble()).isEqualTo(150);
    assertThat(shot.path("speed_u_own_fps").asDouble()).isEqualTo(1);
    assertThat(shot.path("speed_u_common_fps").asDouble()).isEqualTo(3);
    assertThat(shot.path("bow").asText()).isEqualTo("Ash");
    assertThat(send(body).json().path("already").asInt()).isEqualTo(1);
  }

  @Test
  void eachBadLineIsNamed() {
    Asked answer = send("shots", "bow,arrow,speed_fps\nAsh,A1,150\nElm,A1,150\nAsh,A1,x\n");
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.contentType()).startsWith("application/problem+json");
    assertThat(answer.detail()).startsWith("2 lines of the sheet can't be taken in");
    assertThat(answer.json().path("lines").findValuesAsText("line")).containsExactly("3", "4");
    assertThat(answer.json().path("lines").get(1).path("reason").asText())
        .startsWith("speed_fps \"x\" isn't a number");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {"what":"quivers","csv":""}|one of shots, bows, arrows, force-draw
          {"what":"shots"}|"csv" is missing
          {"csv":""}|"what" is missing
          {"what":"shots","csv":""}|is empty
          {"what":"shots","csv":"x","map":[1]}|"map"
          {"what":"shots","csv":"x","map":{"x":1}}|"map"
          {"what":"shots","csv":"x","map":{"x":"sped_fps"}}|speed_fps
          {"what":"shots","csv":"x","common_percent":-1}|common_percent
          {"what":"shots","csv":"x","file":"y"}|no field "file"
          """)
  void whatCantBeReadIsRefused(String body, String told) {
    Asked answer = Asked.send("POST", served.at("/api/import"), body);
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.contentType()).startsWith("application/problem+json");
    assertThat(answer.detail()).contains(told).endsWith(".");
  }

  @Test
  void aSheetMayBeLargeAndNothingElse() {
    String lines = "Ash,A1,150,2026-05-05,".concat("x".repeat(400)).concat("\n").repeat(1000);
    assertThat(send("shots", "bow,arrow,speed_fps,fired_at,note\n" + lines).status())
        .isEqualTo(201);
    Asked tooLarge = send("shots", "x".repeat(8 * 1024 * 1024));
    assertThat(tooLarge.status()).isEqualTo(413);
    assertThat(tooLarge.detail()).contains("8388608 bytes");
    Asked other =
        Asked.send("POST", served.at("/api/bows"), "{\"name\":\"" + "x".repeat(65536) + "\"}");
    assertThat(other.status()).isEqualTo(413);
    assertThat(other.detail()).contains("65536 bytes");
  }
}
