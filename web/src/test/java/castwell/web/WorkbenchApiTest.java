package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.Until;
import castwell.capture.measure.Measures;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What the workbench's pages send, and what they answer when something isn't there. */
@Timeout(300)
class WorkbenchApiTest {
  private static final String DAY = "2026-05-10";

  @TempDir static Path folder;
  private static Served served;

  @BeforeAll
  static void open() {
    served = Served.withoutBoard(folder.resolve("full"), "range");
    Workbench.fill(served);
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static Asked send(String method, String path, String body) {
    return Asked.send(method, served.at(path), body);
  }

  private static HttpResponse<String> page(URI address) {
    HttpRequest request = HttpRequest.newBuilder(address).header("Accept", "text/html").build();
    try {
      return HttpClient.newHttpClient().send(request, BodyHandlers.ofString());
    } catch (IOException | InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static JsonNode shots(String session) {
    return Asked.get(served.at("/api/sessions/" + session + "/shots")).json();
  }

  private static JsonNode named(String what, String name) {
    return StreamSupport.stream(Asked.get(served.at("/api/" + what)).json().spliterator(), false)
        .filter(thing -> thing.path("name").asText().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void severalShotsAreRetaggedAllOrNone() {
    String first = shots("2026-04-10").get(0).path("shot_id").asText();
    String before = shots("2026-04-10").toString();
    String body =
        """
        {"shots":[{"shot_id":"%s","bow":"Hazel","arrow":"Pine"},{"shot_id":"%s","bow":"Hazel","arrow":"Pine"}],
         "why":"a slip"}""";
    Asked refused = send("POST", "/api/shots/tags", body.formatted(first, "no-such"));
    assertThat(refused.status()).isEqualTo(404);
    assertThat(refused.detail()).contains("no-such");
    assertThat(shots("2026-04-10").toString()).isEqualTo(before);
    String second = shots("2026-04-10").get(1).path("shot_id").asText();
    assertThat(send("POST", "/api/shots/tags", body.formatted(first, second)).status())
        .isEqualTo(200);
    assertThat(shots("2026-04-10").get(1).path("bow").asText()).isEqualTo("Hazel");
  }

  @Test
  void aNoteStandsUntilAnotherIsWritten() {
    String path = "/api/sessions/%s/note".formatted(DAY);
    assertThat(send("PUT", path, "{\"note\":\"a gusty day\"}").status()).isEqualTo(200);
    assertThat(page(served.at("/sessions/" + DAY)).body()).contains("a gusty day");
    assertThat(send("PUT", path, "{\"note\":\"\"}").status()).isEqualTo(200);
    assertThat(page(served.at("/sessions/" + DAY)).body()).doesNotContain("a gusty day");
    assertThat(send("PUT", "/api/sessions/none/note", "{\"note\":\"x\"}").status()).isEqualTo(404);
  }

  @Test
  void whatIsOutOfUseIsKeptAndCanBeTakenUpAgain() {
    for (String thing : new String[] {"bows/Hazel", "arrows/Ramin"}) {
      String[] parts = thing.split("/");
      String path = "/api/%s/retired".formatted(thing);
      assertThat(named(parts[0], parts[1]).path("retired").booleanValue()).isFalse();
      assertThat(send("POST", path, "{\"retired\":true}").status()).isEqualTo(200);
      assertThat(named(parts[0], parts[1]).path("retired").booleanValue()).isTrue();
      assertThat(page(served.at("/" + parts[0].replace("bows", "rack"))).body())
          .contains("out of use");
      assertThat(send("POST", path, "{\"retired\":false}").status()).isEqualTo(200);
      assertThat(named(parts[0], parts[1]).path("retired").booleanValue()).isFalse();
      assertThat(send("POST", path, "{}").status()).isEqualTo(400);
    }
  }

  @Test
  void anArrowsMassIsTheMeanOfItsWeighings() {
    for (String grains : new String[] {"501", "500", "502"}) {
      String body = "{\"mass_gr\":%s}".formatted(grains);
      assertThat(send("POST", "/api/arrows/Cedar/weighings", body).status()).isEqualTo(201);
    }
    assertThat(named("arrows", "Cedar").path("mass_gr").asDouble()).isCloseTo(501, within(1e-9));
    // s = 1 and s / sqrt(3) = 0.58, by hand
    assertThat(page(served.at("/arrows")).body()).contains("501.0 ± 0.6 gr", "n = 3");
    assertThat(send("POST", "/api/arrows/Cedar/weighings", "{\"mass_gr\":-1}").status())
        .isEqualTo(400);
  }

  @Test
  void aStrayIsMarkedInItsSessionsList() {
    assertThat(page(served.at("/sessions/2026-05-10?from=50")).body())
        .contains("A stray: more than 99 % sure");
  }

  @Test
  void aMistypedWeighingIsSetAsideAndLeavesTheMean() {
    for (String grains : new String[] {"400.6", "4007", "400.8"}) {
      send("POST", "/api/arrows/Ramin/weighings", "{\"mass_gr\":%s}".formatted(grains));
    }
    JsonNode typed = Asked.get(served.at("/api/arrows/Ramin/weighings")).json().get(1);
    String one = "/api/arrows/Ramin/weighings/" + typed.path("id").asLong();
    assertThat(send("POST", one, "{\"set_aside\":true,\"why\":\"mistyped\"}").status())
        .isEqualTo(200);
    assertThat(named("arrows", "Ramin").path("mass_gr").asDouble()).isCloseTo(400.7, within(1e-9));
    assertThat(page(served.at("/arrows")).body()).contains("set aside: mistyped", "n = 2");
    assertThat(send("POST", one, "{\"set_aside\":false}").status()).isEqualTo(200);
    assertThat(named("arrows", "Ramin").path("mass_gr").asDouble())
        .isCloseTo((400.6 + 4007 + 400.8) / 3, within(1e-9));
    assertThat(send("POST", one + "0000", "{\"set_aside\":true}").status()).isEqualTo(404);
  }

  @Test
  void aMassEnteredAnewTakesThePlaceOfTheWeighings() {
    send("POST", "/api/arrows/Pine/weighings", "{\"mass_gr\":450}");
    send("PUT", "/api/arrows/Pine", "{\"mass_gr\":451.3}");
    assertThat(
            Asked.get(served.at("/api/arrows/Pine/weighings"))
                .json()
                .get(0)
                .path("counts")
                .asBoolean())
        .isFalse();
    assertThat(page(served.at("/arrows")).body()).contains("451.3 gr");
    send("PUT", "/api/arrows/Pine", "{\"mass_gr\":451.3,\"note\":\"new point\"}");
    send("POST", "/api/arrows/Pine/weighings", "{\"mass_gr\":452}");
    assertThat(named("arrows", "Pine").path("mass_gr").asDouble()).isCloseTo(452, within(1e-9));
  }

  @Test
  void aTypedSpeedCountsWithTheBowAndTheArrowChosen() {
    served.commands().tag("range", Optional.of("Alder"), Optional.of("Pine"), "test");
    Asked typed = send("POST", "/api/stations/range/readings", "{\"speed_fps\":131}");
    assertThat(typed.status()).isEqualTo(201);
    assertThat(typed.json().path("speed_fps").asDouble()).isCloseTo(131, within(1e-9));
    assertThat(typed.json().path("bow").asText()).isEqualTo("Alder");
    assertThat(typed.json().path("counts").booleanValue()).isTrue();
    Asked outlandish = send("POST", "/api/stations/range/readings", "{\"speed_fps\":1310}");
    assertThat(outlandish.status()).isEqualTo(400);
    assertThat(outlandish.detail()).contains("ft/s");
    assertThat(send("POST", "/api/stations/none/readings", "{\"speed_fps\":131}").status())
        .isEqualTo(404);
  }

  @Test
  void lookingAtASheetKeepsNothing() {
    int before = Asked.get(served.at("/api/sessions")).json().size();
    Asked look =
        send(
            "POST",
            "/api/import/preview",
            """
            {"what":"shots","csv":"Bow,Arrow,V\\nAlder,Pine,131\\nAlder,Pine,fast\\n","map":{"V":"speed_fps"}}""");
    assertThat(look.status()).isEqualTo(200);
    assertThat(look.json().path("meant").path("V").asText()).isEqualTo("speed_fps");
    assertThat(look.json().path("lines").get(0).path("line").asInt()).isEqualTo(3);
    Asked good =
        send(
            "POST",
            "/api/import/preview",
            "{\"what\":\"shots\",\"csv\":\"bow,arrow,speed_fps,session\\nAlder,Pine,131,new\\n\"}");
    assertThat(good.json().path("would").path("taken").asInt()).isEqualTo(1);
    assertThat(Asked.get(served.at("/api/sessions")).json()).hasSize(before);
  }

  @Test
  void tablesAreTakenAwayAsCsv() {
    HttpResponse<String> csv = page(served.at("/api/export/bows.csv"));
    assertThat(csv.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
    assertThat(csv.body()).startsWith("bow,state_on,").contains("Rowan,2026-05-01");
    assertThat(page(served.at("/api/export/quivers.csv")).statusCode()).isEqualTo(404);
  }

  @Test
  void aCopyIsMadeAndTold() {
    assertThat(page(served.at("/data")).body()).contains("There is no copy yet.");
    Asked made = send("POST", "/api/backups", "{}");
    assertThat(made.status()).isEqualTo(201);
    assertThat(Path.of(made.json().path("file").asText())).exists();
    assertThat(page(served.at("/data")).body()).contains("The last one was made on");
  }

  @Test
  void whatIsNotThereIsSaidOnAPage() {
    for (String path : new String[] {"/bows/Nobody", "/bows/Nobody/card", "/sessions/none"}) {
      HttpResponse<String> answer = page(served.at(path));
      assertThat(answer.statusCode()).isEqualTo(404);
      assertThat(answer.body()).contains("<h1>").contains("There is no");
    }
    assertThat(page(served.at("/reach?momentum=much")).body()).contains("much isn't a number");
  }

  @Test
  void whatAnArrowShouldCarryIsDrawnIn() {
    assertThat(page(served.at("/bows/Alder")).body()).doesNotContain("asked for");
    assertThat(page(served.at("/bows/Alder?momentum=0.4")).body()).contains("asked for: 0.4 slug");
    assertThat(page(served.at("/bows/Alder?energy=25")).body()).contains("asked for: 25 ft");
    assertThat(page(served.at("/bows/Alder?energy=much")).statusCode()).isEqualTo(400);
  }

  @Test
  void onePersonReadsMetresWhereAnotherReadsFeet() throws IOException, InterruptedException {
    HttpRequest metric =
        HttpRequest.newBuilder(served.at("/bows/Alder"))
            .header("Cookie", "castwell-units=si")
            .build();
    String body = HttpClient.newHttpClient().send(metric, BodyHandlers.ofString()).body();
    assertThat(body).contains("m/s", "68.1 cm").doesNotContain("ft/s.");
    assertThat(page(served.at("/bows/Alder")).body()).contains("ft/s", "26.8 in");
  }

  @Test
  void whoeverHasNoKeyIsLedToTheWayIn() throws IOException {
    Path other = Files.createDirectories(folder.resolve("wider"));
    try (Served wider = Served.forOthers(other, "")) {
      HttpResponse<String> answer = page(wider.at("/rack"));
      assertThat(answer.statusCode()).isEqualTo(303);
      assertThat(answer.headers().firstValue("Location").orElse("")).endsWith("/enter");
      assertThat(page(wider.at("/lib/d3-7.9.0.min.js")).statusCode()).isEqualTo(200);
    }
  }

  @Test
  void otherGatesAreTriedOutBeforeAnybodySaysYes() {
    TypedBoard board = new TypedBoard();
    try (Served gates = Served.at(folder.resolve("gates"), board.port())) {
      board.answer();
      for (int i = 0; i < 3; i++) {
        board.arrow(45 + 0.1 * i, 0.74);
        int wanted = i + 1;
        Until.holds(
            "the shot",
            () -> gates.store().read(t -> t.shots().latest("range", 9)).size() == wanted);
      }
      gates.commands().bows().add("Alder", java.time.Instant.EPOCH, 200, 0.7, "");
      gates.commands().arrows().add("Pine", 0.03, Measures.none());
      for (var shot : gates.store().read(t -> t.shots().latest("range", 9))) {
        gates
            .commands()
            .retag(shot.shotId(), Optional.of("Alder"), Optional.of("Pine"), "test", "");
      }
      String session = gates.store().read(t -> t.sessions().all().get(0).name());
      String before = exported(gates);
      HttpResponse<String> trial =
          page(gates.at("/sessions/" + session + "?spacing=615&spacing_u=0.5"));
      assertThat(trial.body()).contains("What would change", "Alder · Pine", "3 → 3");
      assertThat(exported(gates)).isEqualTo(before);
      double was = mean(gates);
      Asked yes =
          Asked.send(
              "POST",
              gates.at("/api/stations/range/calibrations"),
              "{\"from\":\"2020-01-01\",\"spacing_mm\":615,\"spacing_u_mm\":0.5}");
      assertThat(yes.json().path("shots_derived_anew").asInt()).isEqualTo(3);
      // v = d / dt: every speed grows as the spacing does
      assertThat(mean(gates) / was).isCloseTo(615 / 609.6, within(1e-9));
    }
  }

  private static String exported(Served from) {
    return page(from.at("/api/export/shots.csv")).body()
        + page(from.at("/api/export/figures.csv")).body()
        + Asked.get(from.at("/api/stations/range/calibrations")).json();
  }

  private static double mean(Served from) {
    return from.store().read(t -> t.shots().latest("range", 9)).stream()
        .mapToDouble(shot -> shot.figure().speedMps().orElseThrow())
        .average()
        .orElseThrow();
  }
}
