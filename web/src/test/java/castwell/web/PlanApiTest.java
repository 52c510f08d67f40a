package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.measure.Measures;
import castwell.capture.view.Json;
import castwell.web.FeedReader.Event;
import castwell.web.http.api.PlanViews;
import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Plans and wrong tags over the API, with a board that shoots what the test wants. */
@Tag("slow")
@Timeout(300)
class PlanApiTest {
  private static final String PLAN =
      "{\"station\":\"range\",\"name\":\"tips\",\"turns\":[{\"bow\":\"Ash\",\"arrow\":\"Light\"},"
          + "{\"bow\":\"Yew\",\"arrow\":\"Heavy\"},{\"bow\":\"Ash\",\"arrow\":\"Heavy\"}]}";

  @TempDir Path folder;
  private TypedBoard board;
  private Served served;
  private JsonSchema schema;

  @BeforeEach
  void serve() {
    board = new TypedBoard();
    served = Served.at(folder, board.port());
    served.commands().bows().add("Ash", Instant.EPOCH, 230, 0.69, "");
    served.commands().bows().add("Yew", Instant.EPOCH, 250, 0.69, "");
    served.commands().arrows().add("Light", 0.025, Measures.none());
    served.commands().arrows().add("Heavy", 0.035, Measures.none());
    board.answer();
    schema =
        JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(get("/api/schemas/plan.json"));
  }

  @AfterEach
  void end() {
    served.close();
    board.close();
  }

  private JsonNode post(String path, String body, int status) {
    Asked asked = Asked.send("POST", served.at(path), body);
    assertThat(asked.status()).as("%s", asked.json()).isEqualTo(status);
    return asked.json();
  }

  private JsonNode get(String path) {
    return Asked.get(served.at(path)).json();
  }

  private long make() {
    return post("/api/plans", PLAN, 201).path("plan").asLong();
  }

  private JsonNode say(long plan, String word) {
    return post("/api/plans/" + plan + "/events", "{\"do\":\"" + word + "\"}", 200);
  }

  private JsonNode range() {
    return get("/api/range");
  }

  /** Checked against the schema that is served to who is told of it. */
  private JsonNode rangesPlan() {
    JsonNode plan = range().path("plan");
    assertThat(schema.validate(plan)).isEmpty();
    return plan;
  }

  private static List<JsonNode> list(JsonNode array) {
    return StreamSupport.stream(array.spliterator(), false).toList();
  }

  /** Shoots, and waits for the shot. */
  private JsonNode shoot(double mps, double lengthM) {
    String before = range().at("/last/shot_id").asText();
    board.arrow(mps, lengthM);
    return await(before);
  }

  private JsonNode await(String before) {
    Until.holds(
        "the shot",
        () -> {
          String last = range().at("/last/shot_id").asText();
          return !last.isEmpty() && !last.equals(before);
        });
    return range().path("last");
  }

  private static void isTagged(JsonNode shot, String bow, String arrow) {
    assertThat(shot.path("bow").asText()).isEqualTo(bow);
    assertThat(shot.path("arrow").asText()).isEqualTo(arrow);
  }

  @Test
  void aPlanIsMadeBegunShotAndOver() {
    JsonNode made = post("/api/plans", PLAN, 201);
    assertThat(made.path("state").asText()).isEqualTo("ready");
    assertThat(made.path("order")).hasSize(3);
    assertThat(range().path("plan").isNull()).as("nothing before it begins").isTrue();
    long plan = made.path("plan").asLong();

    JsonNode begun = say(plan, "start");
    assertThat(begun.path("state").asText()).isEqualTo("running");
    assertThat(begun.path("sentence").asText()).isEqualTo("Shoot Light from Ash.");
    assertThat(begun.at("/then/arrow").asText()).isEqualTo("Heavy");
    assertThat(range().at("/tags/bow").asText()).isEqualTo("Ash");

    isTagged(shoot(50, 0.73), "Ash", "Light");
    JsonNode second = rangesPlan();
    assertThat(second.at("/now/turn").asInt()).isEqualTo(2);
    assertThat(second.path("done").asInt()).isEqualTo(1);
    assertThat(range().at("/tags/bow").asText()).isEqualTo("Yew");

    String before = range().at("/last/shot_id").asText();
    board.misread(50);
    assertThat(await(before).path("counts").asBoolean()).isFalse();
    assertThat(rangesPlan().path("sentence").asText())
        .isEqualTo("That one didn't count: shoot it again.");
    isTagged(shoot(50, 0.73), "Yew", "Heavy");

    say(plan, "skip");
    assertThat(rangesPlan().path("state").asText()).isEqualTo("ended");
    JsonNode over = get("/api/plans/" + plan);
    assertThat(over.path("state").asText()).isEqualTo("ended");
    assertThat(over.path("sentence").asText())
        .isEqualTo("The plan is over: 2 of 3 shot, 1 skipped.");
    assertThat(list(over.path("order")))
        .extracting(turn -> turn.path("became").asText())
        .containsExactly("shot", "shot", "skipped");
  }

  @Test
  void whatTheFeedAndAPublisherTellIsWhatTheApiTells() throws Exception {
    long plan = make();
    long last = served.store().read(t -> t.feed().last());
    try (FeedReader reader = FeedReader.after(served.at("/api/live"), last)) {
      say(plan, "start");
      assertThat(reader.next().kind()).isEqualTo("tags");
      Event told = reader.next();
      assertThat(told.kind()).isEqualTo("plan");
      JsonNode asked = rangesPlan();
      assertThat(told.data()).isEqualTo(asked);
      var published = PlanViews.of(served.store()).apply("range").orElseThrow();
      assertThat(Json.text(published)).isEqualTo(asked.toString());
    }
    assertThat(PlanViews.of(served.store()).apply("elsewhere")).isEmpty();
  }

  @Test
  void theBoardsKeyPausesItAndItSaysSo() {
    long plan = make();
    say(plan, "start");
    board.key('S');
    Until.holds("the pause", () -> range().at("/plan/state").asText().equals("paused"));
    assertThat(rangesPlan().path("sentence").asText())
        .isEqualTo("Paused: bow or arrow was changed by the board's key. Resume to go on.");
    say(plan, "resume");
    assertThat(range().at("/tags/arrow").asText()).isEqualTo("Light");
  }

  @Test
  void aShotSetAsideLaterIsOfferedAgain() {
    long plan = make();
    say(plan, "start");
    String shot = shoot(50, 0.73).path("shot_id").asText();
    assertThat(rangesPlan().path("shoot_again")).isEmpty();
    post("/api/shots/" + shot + "/decision", "{\"counts\":false,\"reason\":\"plucked\"}", 200);
    JsonNode again = rangesPlan().at("/shoot_again/0");
    assertThat(again.path("sentence").asText())
        .isEqualTo("Turn 1, Light from Ash: its shot was set aside or retagged since. Repeat it?");
    assertThat(range().at("/plan/now/turn").asInt()).isEqualTo(2);
    post("/api/plans/" + plan + "/events", "{\"do\":\"repeat\",\"turn\":1}", 200);
    isTagged(shoot(50, 0.73), "Ash", "Light");
    assertThat(rangesPlan().path("shoot_again")).isEmpty();
  }

  @Test
  void aPlanComesFromTheReportAndInItsOrder() {
    String query = "?control=Yew&change_fps=3&sd_fps=1.5&arrow=Light&arrow=Heavy&seed=7";
    JsonNode report = get("/api/reports/plan/Ash" + query);
    JsonNode made =
        post(
            "/api/plans",
            "{\"station\":\"range\",\"from\":{\"bow\":\"Ash\",\"control\":[\"Yew\"],\"change_fps\":3,"
                + "\"sd_fps\":1.5,\"arrow\":[\"Light\",\"Heavy\"],\"seed\":7}}",
            201);
    assertThat(made.path("name").asText()).isEqualTo("Rework of Ash");
    assertThat(made.path("sentences")).isEqualTo(report.path("sentences"));
    assertThat(list(made.path("order")))
        .extracting(turn -> turn.path("bow").asText() + turn.path("arrow").asText())
        .containsExactlyElementsOf(
            list(report.path("order")).stream()
                .map(turn -> turn.path("bow").asText() + turn.path("arrow").asText())
                .toList())
        .hasSizeGreaterThan(20);
    assertThat(list(get("/api/plans?station=range"))).hasSize(1);
  }

  @Test
  void aPlanThatCantBeIsRefusedInOneSentence() {
    String turn = "{\"bow\":\"Ash\",\"arrow\":\"%s\"}";
    Map<String, Integer> refused = new LinkedHashMap<>();
    refused.put("\"station\":\"nowhere\",\"turns\":[]", 404);
    refused.put("\"station\":\"range\"", 400);
    refused.put("\"station\":\"range\",\"turns\":[],\"from\":{\"bow\":\"Ash\"}", 400);
    refused.put("\"station\":\"range\",\"turns\":[]", 400);
    refused.put("\"station\":\"range\",\"turns\":[{\"bow\":\"Ash\"}]", 400);
    refused.put("\"station\":\"range\",\"turns\":[" + turn.formatted("Nobody") + "]", 404);
    refused.put(
        "\"station\":\"range\",\"name\":\" \",\"turns\":[" + turn.formatted("Heavy") + "]", 400);
    refused.put("\"station\":\"range\",\"from\":{\"bow\":\"Ash\"}", 400);
    refused.put("\"station\":\"range\",\"from\":[]", 400);
    refused.put("\"station\":\"range\",\"from\":{\"bow\":\"Ash\",\"control\":\"Yew\"}", 400);
    refused.put("\"station\":\"range\",\"from\":{\"bow\":\"Ash\",\"control\":[7]}", 400);
    String many = ("," + turn.formatted("Heavy")).repeat(2001).substring(1);
    refused.put("\"station\":\"range\",\"turns\":[" + many + "]", 400);
    refused.forEach(
        (body, status) ->
            assertThat(post("/api/plans", "{" + body + "}", status).path("detail").asText())
                .matches("[^\\n]{10,300}\\."));
    assertThat(list(get("/api/plans"))).isEmpty();
  }

  @Test
  void whatCantBeSaidOfAPlanIsRefused() {
    String path = "/api/plans/" + make() + "/events";
    post(path, "{\"do\":\"dance\"}", 400);
    post(path, "{\"do\":\"skip\"}", 409);
    post(path, "{\"do\":\"start\",\"turn\":1.5}", 400);
    post(path, "{\"do\":\"start\",\"turn\":99999999999}", 400);
    post(path, "{}", 400);
    post("/api/plans/99/events", "{\"do\":\"start\"}", 404);
    post("/api/plans/x/events", "{\"do\":\"start\"}", 404);
    assertThat(Asked.get(served.at("/api/plans/99")).status()).isEqualTo(404);
    assertThat(Asked.get(served.at("/api/plans?station=nowhere")).status()).isEqualTo(404);
  }

  private void tag(String bow, String arrow) {
    served.commands().tag("range", Optional.of(bow), Optional.of(arrow), "test");
  }

  @Test
  void aShotThatFitsAnotherArrowIsPointedOutAndNeverChanged() {
    double[] off = {0.2, -0.1, 0, 0.1, -0.2};
    tag("Ash", "Heavy");
    for (double o : off) {
      assertThat(shoot(44 + o, 0.76 + o / 100).path("misfit").isNull()).isTrue();
    }
    tag("Ash", "Light");
    for (double o : off) {
      assertThat(shoot(50 + o, 0.71 + o / 100).path("misfit").isNull()).isTrue();
    }
    JsonNode wrong = shoot(44.05, 0.761);
    isTagged(wrong, "Ash", "Light");
    assertThat(wrong.at("/misfit/fits/0/bow").asText()).isEqualTo("Ash");
    assertThat(wrong.at("/misfit/fits/0/arrow").asText()).isEqualTo("Heavy");
    assertThat(wrong.at("/misfit/fits/0/times_as_likely").asDouble()).isGreaterThan(1e4);
    assertThat(wrong.at("/misfit/sentence").asText())
        .isEqualTo(
            "It fits Ash with Heavy better than its tags: by earlier shots alone, such a speed"
                + " and length are over a million times as likely of it.");
    String path = "/api/shots/" + wrong.path("shot_id").asText();
    assertThat(get(path).at("/shot/misfit")).isEqualTo(wrong.path("misfit"));

    // Whoever says what it was is believed, also that it was right.
    post(path + "/tags", "{\"bow\":\"Ash\",\"arrow\":\"Light\",\"why\":\"it was\"}", 200);
    assertThat(get(path).at("/shot/misfit").isNull()).isTrue();
    // Later shots never make an earlier one a misfit.
    assertThat(shoot(50, 0.71).path("misfit").isNull()).isTrue();
    assertThat(list(range().at("/end/shots")))
        .allSatisfy(shot -> assertThat(shot.path("misfit").isNull()).isTrue());
  }

  /** What the bow did before something was done to it tells nothing of it as it is now. */
  @Test
  void aBowThatWasReworkedIsNotKnownYet() {
    double[] off = {0.2, -0.1, 0, 0.1, -0.2};
    for (String arrow : new String[] {"Heavy", "Light"}) {
      tag("Ash", arrow);
      for (double o : off) {
        shoot((arrow.equals("Heavy") ? 44 : 50) + o, 0.73 + o / 100);
      }
    }
    assertThat(shoot(44.1, 0.73).at("/misfit/fits/0/arrow").asText()).isEqualTo("Heavy");
    post("/api/bows/Ash/states", "{\"draw_weight_lb\":50,\"draw_length_in\":27}", 201);
    assertThat(shoot(44.1, 0.73).path("misfit").isNull()).isTrue();
  }
}
