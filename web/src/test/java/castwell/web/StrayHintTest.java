package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.measure.Measures;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Strays as they are told while one shoots, by what was shot so far. */
class StrayHintTest {
  @TempDir Path folder;
  private Served served;

  @BeforeEach
  void serve() {
    served = Served.withoutBoard(folder, "range");
    for (String bow : new String[] {"Ash", "Yew"}) {
      served.commands().bows().add(bow, Instant.EPOCH, 230, 0.69, "");
    }
    served.commands().arrows().add("Light", 0.025, Measures.none());
    served.commands().arrows().add("Heavy", 0.035, Measures.none());
  }

  @AfterEach
  void end() {
    served.close();
  }

  private void tag(String bow, String arrow) {
    served.commands().tag("range", Optional.of(bow), Optional.of(arrow), "test");
  }

  private JsonNode shoot(double fps) {
    String body = "{\"speed_fps\":%s}".formatted(fps);
    Asked asked = Asked.send("POST", served.at("/api/stations/range/readings"), body);
    assertThat(asked.status()).as(asked.detail()).isEqualTo(201);
    return asked.json();
  }

  private JsonNode decide(JsonNode shot, String counts) {
    String body = "{\"counts\":%s,\"reason\":\"seen\"}".formatted(counts);
    String path = "/api/shots/" + shot.path("shot_id").asText() + "/decision";
    return Asked.send("POST", served.at(path), body).json();
  }

  private JsonNode last() {
    return Asked.get(served.at("/api/range")).json().path("last");
  }

  private void shootGood(double... speeds) {
    for (double fps : speeds) {
      assertThat(shoot(fps).path("stray").isNull()).isTrue();
    }
  }

  @Test
  void aPluckedShotIsToldAtOnceAndBelievesWhoeverSawIt() {
    tag("Ash", "Light");
    shootGood(160.2, 159.6, 160.5);
    tag("Ash", "Heavy");
    shootGood(140.1, 139.7);

    JsonNode plucked = shoot(130.5);

    assertThat(plucked.at("/stray/set_aside").asBoolean()).isTrue();
    assertThat(plucked.at("/stray/chance").asDouble()).isBetween(0.9, 1.0);
    assertThat(plucked.at("/stray/sentence").asText())
        .isEqualTo(
            "By what was shot so far it is more than 99 % sure that it was plucked or measured"
                + " wrongly: reports leave it out.");
    assertThat(plucked.path("counts").asBoolean()).isTrue();
    assertThat(last().path("stray")).isEqualTo(plucked.path("stray"));

    assertThat(decide(plucked, "true").path("stray").isNull()).isTrue();
    assertThat(decide(plucked, "null").path("stray").isNull()).isFalse();
    assertThat(decide(plucked, "false").path("stray").isNull()).isTrue();
  }

  /** The second of two may be as wrong as the first: the third tells which it was. */
  @Test
  void theNextShotsTellOfAnEarlierOne() {
    tag("Ash", "Heavy");
    JsonNode first = shoot(130.4);
    shootGood(140.1);
    shoot(139.8);
    String path = "/api/shots/" + first.path("shot_id").asText();
    assertThat(Asked.get(served.at(path)).json().at("/shot/stray/set_aside").asBoolean()).isTrue();
  }

  @Test
  void anotherBowsSpreadIsNoMatter() {
    tag("Yew", "Heavy");
    for (double fps : new double[] {120, 124, 116, 121, 119}) {
      shoot(fps);
    }
    tag("Ash", "Heavy");
    shootGood(140.1, 139.7, 140.3, 139.9, 140);
    assertThat(shoot(134).at("/stray/set_aside").asBoolean()).isTrue();
  }
}
