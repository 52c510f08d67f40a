package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A speed read off another display is a shot like any, except that it has no ticks. */
class ByHandTest {
  @TempDir Path folder;
  private Served served;
  private JsonNode shot;

  @BeforeEach
  void enter() {
    served = Served.withoutBoard(folder, "range");
    send("POST", "/api/bows", "{'name':'Ash','draw_weight_lb':50,'draw_length_in':27}");
    send("POST", "/api/bows", "{'name':'Elm','draw_weight_lb':40,'draw_length_in':27}");
    send("POST", "/api/arrows", "{'name':'A1','mass_gr':500,'length_in':30,'diameter_in':0.34}");
    String csv =
        "bow,arrow,speed_fps,fired_at,station,note\nAsh,A1,150,2026-05-04T10:00,range,windy\n";
    send(
        "POST",
        "/api/import",
        JsonMapper.builder()
            .build()
            .createObjectNode()
            .put("what", "shots")
            .put("csv", csv)
            .toString());
    shot = Asked.get(served.at("/api/sessions/2026-05-04/shots")).json().get(0);
  }

  @AfterEach
  void end() {
    served.close();
  }

  private JsonNode send(String method, String path, String body) {
    Asked asked =
        Asked.send(method, served.at(path), body.contains("'") ? body.replace('\'', '"') : body);
    assertThat(asked.status()).as("%s", asked.json()).isBetween(200, 299);
    return asked.json();
  }

  private String path() {
    return "/api/shots/" + shot.path("shot_id").asText();
  }

  private JsonNode now() {
    return Asked.get(served.at(path())).json();
  }

  @Test
  void itSaysThatNoGatesSawIt() {
    assertThat(shot.path("entered").asText()).isEqualTo("by-hand");
    assertThat(shot.path("note").asText()).isEqualTo("windy");
    assertThat(shot.path("counts").booleanValue()).isTrue();
    for (String field :
        new String[] {
          "device", "boot", "first_edge", "front_fps", "tail_fps", "length_mm", "speed_at_bow_fps"
        }) {
      assertThat(shot.get(field).isNull()).as(field).isTrue();
    }
    assertThat(now().path("figures")).isEmpty();
    assertThat(now().path("edges")).isEmpty();
  }

  @Test
  void itIsSetAsideAndBroughtBack() {
    JsonNode aside = send("POST", path() + "/decision", "{'counts':false,'reason':'misread'}");
    assertThat(aside.path("counts").booleanValue()).isFalse();
    JsonNode back = send("POST", path() + "/decision", "{'counts':true,'reason':'it was right'}");
    assertThat(back.path("counts").booleanValue()).isTrue();
  }

  @Test
  void retaggedItCarriesTheOtherBow() {
    JsonNode tagged =
        send("POST", path() + "/tags", "{'bow':'Elm','arrow':'A1','why':'wrong line'}");
    assertThat(tagged.path("bow").asText()).isEqualTo("Elm");
    assertThat(tagged.path("grains_per_pound").asDouble()).isCloseTo(12.5, within(1e-9));
    assertThat(tagged.path("speed_fps").asDouble()).isCloseTo(150, within(1e-9));
  }

  @Test
  void anArrowWeighedAnewChangesItsEnergyAndGatesMeasuredAnewChangeNothing() {
    double energy = shot.path("kinetic_energy_ftlbf").asDouble();
    send("PUT", "/api/arrows/A1", "{'mass_gr':550,'length_in':30}");
    JsonNode heavier = now().path("shot");
    assertThat(heavier.path("kinetic_energy_ftlbf").asDouble())
        .isCloseTo(energy * 550 / 500, within(1e-9));

    JsonNode calibrated =
        send(
            "POST",
            "/api/stations/range/calibrations",
            "{'from':'2026-05-01','spacing_mm':700,'spacing_u_mm':1}");

    assertThat(calibrated.path("shots_derived_anew").intValue()).isZero();
    assertThat(now().path("shot")).isEqualTo(heavier);
  }
}
