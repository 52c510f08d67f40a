package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Store;
import castwell.web.Program.Outcome;
import castwell.web.cli.Castwell;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Reports at the command line, on shots that were imported. */
@Tag("slow")
@Timeout(300)
class ReportTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private static final String BOWS =
      """
      bow,state_on,draw_weight_lb,draw_length_in,nock_to_nock_in,brace_height_in
      Ash,2026-04-01,50,27,66,6.25
      Ash,2026-05-01,50,27,66,6.25
      Elm,2026-04-01,50,27,67,6.25
      Yew,2026-04-01,45,27,64,6
      """;

  private static final String ARROWS =
      "arrow,mass_gr\nA300,300\nA400,400\nA500,500\nA600,600\nA700,700\n";

  @TempDir Path folder;
  private Path data;

  @BeforeEach
  void fill() throws IOException {
    data = folder.resolve("data");
    take("bows", BOWS);
    take("arrows", ARROWS);
  }

  private void take(String what, String csv) throws IOException {
    Path file = Files.writeString(folder.resolve(what + ".csv"), csv);
    assertThat(Castwell.run("import", "--data", data.toString(), "--what", what, file.toString()))
        .isZero();
  }

  private JsonNode report(String... arguments) throws IOException {
    Path out = folder.resolve("report.json");
    List<String> all = new ArrayList<>(List.of("report"));
    all.addAll(List.of(arguments));
    all.addAll(List.of("--data", data.toString(), "--format", "json", "--out", out.toString()));
    assertThat(Castwell.run(all.toArray(String[]::new))).isZero();
    return JSON.readTree(out.toFile());
  }

  /** v = sqrt(2 E / (m + K)), E = 30 ft lbf, K = 150 gr, worked out apart from this project. */
  private void takeExactSpeeds() throws IOException {
    take(
        "shots",
        """
        bow,arrow,speed_fps,session
        Ash,A300,173.289099444,2026-04-10
        Ash,A400,156.745888122,2026-04-10
        Ash,A500,144.185246198,2026-04-10
        Ash,A600,134.229159245,2026-04-10
        Ash,A700,126.086340137,2026-04-10
        """);
  }

  @Test
  void exactSpeedsGiveEnergyAndVirtualMass() throws IOException {
    takeExactSpeeds();

    JsonNode bow = report("bow", "Ash", "--state", "2026-04-01");

    JsonNode model = bow.path("virtual_mass_repeats");
    assertThat(model.path("energy_ftlbf").asDouble()).isCloseTo(30, within(3e-8));
    assertThat(model.path("virtual_mass_gr").asDouble()).isCloseTo(150, within(1.5e-7));
    holds(bow.path("any_day").path("energy_ci95_ftlbf"), 30);
    holds(bow.path("any_day").path("virtual_mass_ci95_gr"), 150);
    assertThat(bow.path("any_day").path("joint_region")).hasSizeGreaterThan(50);
    JsonNode cast = bow.path("cast");
    assertThat(cast.path("mass_gr").asDouble()).isCloseTo(500, within(1e-9));
    // What is assumed of any bow moves it by less than a thousandth.
    assertThat(cast.path("speed_fps").asDouble()).isCloseTo(144.185246198, within(0.1));
    holds(cast.path("ci95_any_day_fps"), 144.185246198);
    holds(cast.path("ci95_today_fps"), 144.185246198);
    assertThat(width(cast.path("ci95_any_day_fps")))
        .isGreaterThan(width(cast.path("ci95_today_fps")));
    holds(bow.path("energy_share").get(2).path("share_ci95_percent"), 76.9231);
    assertThat(bow.path("cells").get(0).path("ci95_repeats_fps").get(0).isNull()).isTrue();
  }

  private static void holds(JsonNode interval, double truth) {
    assertThat(truth).isBetween(interval.get(0).asDouble(), interval.get(1).asDouble());
  }

  private static double width(JsonNode interval) {
    return interval.get(1).asDouble() - interval.get(0).asDouble();
  }

  /** Values of exactly this mean and standard deviation. */
  private static String shots(
      String bow, String arrow, String session, double mean, double sd, int n) {
    double[] raw = IntStream.range(0, n).mapToDouble(i -> i * i).toArray();
    double rawMean = Arrays.stream(raw).average().orElseThrow();
    double rawSd =
        Math.sqrt(Arrays.stream(raw).map(x -> (x - rawMean) * (x - rawMean)).sum() / (n - 1));
    StringBuilder lines = new StringBuilder();
    for (double x : raw) {
      double speed = mean + (x - rawMean) / rawSd * sd;
      lines.append(String.format(Locale.ROOT, "%s,%s,%.12f,%s%n", bow, arrow, speed, session));
    }
    return lines.toString();
  }

  private void takeARework() throws IOException {
    take(
        "shots",
        "bow,arrow,speed_fps,session\n"
            + shots("Ash", "A500", "2026-04-10", 150, 1.2, 10)
            + shots("Ash", "A500", "2026-05-10", 154, 1.5, 10)
            + shots("Elm", "A500", "2026-04-10", 148, 1.1, 8)
            + shots("Elm", "A500", "2026-05-10", 148.6, 1.3, 8));
  }

  /** Reckoned by an independent program in R: what a display is off by is alike, and cancels. */
  @Test
  void aReworkWithAControlByTheSeason() throws IOException {
    takeARework();

    JsonNode report =
        report(
            "rework", "Ash", "--before", "2026-04-10", "--after", "2026-05-10", "--control", "Elm");

    JsonNode rework = report.path("rework");
    assertThat(rework.path("change_fps").asDouble()).isCloseTo(3.6651, within(2e-3));
    assertThat(rework.path("ci95_fps").get(0).asDouble()).isCloseTo(0.9827, within(2e-3));
    assertThat(rework.path("ci95_fps").get(1).asDouble()).isCloseTo(6.4634, within(2e-3));
    assertThat(rework.path("p").asDouble()).isCloseTo(0.01504, within(1e-4));
    assertThat(rework.path("conclusion").asText()).isEqualTo("faster");
    assertThat(report.path("moved").isNull()).isTrue();
    // By repeats alone: Welch's, from the means and standard deviations above.
    JsonNode arrow = report.path("arrows").get(0);
    assertThat(arrow.path("change_fps").asDouble()).isCloseTo(4, within(1e-9));
    assertThat(arrow.path("ci95_repeats_alone_fps").get(0).asDouble())
        .isCloseTo(2.719365, within(1e-6));
  }

  @Test
  void aReworkTellsThatTheTillerChanged() throws IOException {
    take(
        "bows",
        """
        bow,state_on,draw_weight_lb,draw_length_in,tiller_mm,tip_thickness_mm
        Ash,2026-04-01,50,27,7,12
        Ash,2026-05-01,50,27,2,12
        """);
    takeARework();

    JsonNode report = report("rework", "Ash", "--before", "2026-04-10", "--after", "2026-05-10");

    assertThat(report.path("conditions").findValuesAsText("what"))
        .contains("tiller")
        .doesNotContain("tip thickness");
    assertThat(report.path("conditions").findValuesAsText("sentence"))
        .contains(
            "The tiller changed from 7 mm to 2 mm: that is part of the rework, not of the day.");
  }

  @Test
  void withoutAControlItSaysWhatItCantRuleOut() throws IOException {
    take(
        "shots",
        "bow,arrow,speed_fps,session\n"
            + shots("Ash", "A500", "2026-04-10", 150, 1.2, 10)
            + shots("Ash", "A500", "2026-05-10", 150.3, 1.5, 10));

    JsonNode report = report("rework", "Ash", "--before", "2026-04-10", "--after", "2026-05-10");

    assertThat(report.path("rework").path("conclusion").asText()).isEqualTo("can't tell");
    assertThat(report.path("sentences").toString())
        .contains("a day can't be told from a bow's own");
  }

  private void takeThreeBows() throws IOException {
    take(
        "shots",
        "bow,arrow,speed_fps,session\n"
            + shots("Ash", "A400", "2026-04-10", 156.7, .8, 5)
            + shots("Ash", "A500", "2026-04-10", 144.2, .8, 5)
            + shots("Ash", "A700", "2026-04-10", 126.1, .8, 5)
            + shots("Elm", "A400", "2026-04-10", 156.5, .8, 5)
            + shots("Elm", "A500", "2026-04-10", 144.1, .8, 5)
            + shots("Elm", "A700", "2026-04-10", 126.0, .8, 5)
            + shots("Yew", "A400", "2026-04-10", 140.2, .8, 5)
            + shots("Yew", "A500", "2026-04-10", 129.0, .8, 5)
            + shots("Yew", "A700", "2026-04-10", 112.8, .8, 5));
  }

  @Test
  void bowsThatCantBeToldApartShareAGroup() throws IOException {
    takeThreeBows();

    JsonNode ranking = report("ranking", "--scale-u-lb", "0");

    // Ash has been in another state since May, of which there are no shots yet.
    assertThat(ranking.path("left_out").findValuesAsText("bow")).containsExactly("Ash");
    assertThat(ranking.path("ranking").findValuesAsText("bow")).containsExactly("Elm", "Yew");
    assertThat(ranking.path("groups").toString()).isEqualTo("[[\"Elm\"],[\"Yew\"]]");
  }

  @Test
  void everyBowsLeastArrowForWhatServed() throws IOException {
    takeThreeBows();

    JsonNode reach = report("reach", "--like-bow", "Elm", "--like-arrow", "A500").path("reach");

    assertThat(reach.findValuesAsText("bow")).containsExactly("Elm", "Yew");
    assertThat(reach.get(0).path("mass_gr").asDouble()).isCloseTo(500, within(5.0));
    assertThat(reach.get(1).path("mass_gr").asDouble()).isGreaterThan(560);
    assertThat(reach.get(0).path("ci95_gr").get(0).asDouble())
        .isLessThan(reach.get(0).path("mass_gr").asDouble());
    JsonNode never = report("reach", "--energy-ftlbf", "80").path("reach");
    assertThat(never.findValuesAsText("verdict")).containsOnly("never");
    assertThat(never.get(0).path("mass_gr").isNull()).isTrue();
  }

  /** R's help of power.t.test, from memory: power 0.90, delta = sd takes 22.02110 each. */
  @Test
  void aPlanSaysHowManyShotsInWhichOrder() throws IOException {
    JsonNode plan =
        report(
            "plan",
            "Elm",
            "--change-fps",
            "1",
            "--sd-fps",
            "1",
            "--power",
            "0.9",
            "--arrow",
            "A400",
            "--arrow",
            "A500");

    assertThat(plan.path("shots_per_cell_exact").asDouble()).isCloseTo(22.02110, within(1e-5));
    assertThat(plan.path("shots_per_cell").asInt()).isEqualTo(23);
    assertThat(plan.path("order")).hasSize(46);
  }

  @Test
  void aSessionTellsItsStraysAndItsDrift() throws IOException {
    takeThreeBows();
    take("shots", "bow,arrow,speed_fps,session\nYew,A500,90,2026-04-10\n");

    JsonNode session = report("session", "2026-04-10");

    assertThat(session.path("strays")).hasSize(1);
    assertThat(session.path("sentences").toString())
        .contains("1 shot was set aside as a stray: Yew with A500 at 90.0 ft/s.");
    assertThat(session.path("set_aside").get(0).path("reason").asText()).startsWith("A stray:");
    assertThat(session.path("drift").path("p").isNumber()).isTrue();
    assertThat(session.path("degrees_of_freedom").asInt()).isEqualTo(36);
  }

  /**
   * NIST/SEMATECH e-Handbook, 1.3.5.17.1: Grubbs finds 245.57, and so do the others, also where a
   * person brought it back.
   */
  @Test
  void oneCellAloneIsLookedAtByTheTestsForOneSet() throws IOException {
    StringBuilder csv = new StringBuilder("bow,arrow,speed_fps,session\n");
    for (double speed :
        new double[] {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57}) {
      csv.append("Elm,A500,").append(speed).append(",2026-04-10\n");
    }
    take("shots", csv.toString());

    JsonNode stray = report("session").path("strays").get(0);
    assertThat(stray.path("speed_fps").asDouble()).isCloseTo(245.57, within(1e-9));
    bringBack(stray.path("shot_id").asText());

    JsonNode cell = report("session").path("cells").get(0);

    assertThat(cell.path("n").asInt()).isEqualTo(8);
    assertThat(cell.path("alone").path("grubbs")).hasSize(1);
    assertThat(cell.path("alone").path("generalized_esd")).hasSize(1);
    assertThat(cell.path("alone").path("modified_z")).hasSize(1);
    assertThat(cell.path("alone").path("dixon").asBoolean()).isTrue();
  }

  private void bringBack(String shotId) {
    try (Store store = Store.open(data)) {
      store.writing(
          t ->
              t.decisions()
                  .decide(
                      t.passages().byShotId(shotId).orElseThrow().id(),
                      Decided.BROUGHT_BACK,
                      "seen",
                      Instant.EPOCH,
                      "test"));
    }
  }

  @Test
  void textSaysASentenceFirstAndTheTableAfter() throws IOException {
    takeThreeBows();
    Path out = folder.resolve("report.txt");

    assertThat(
            Castwell.run(
                "report", "bow", "Elm", "--data", data.toString(), "--out", out.toString()))
        .isZero();

    List<String> lines = Files.readAllLines(out);
    assertThat(lines.get(0)).startsWith("On any day Elm (50.0 lb at 27.0 in").contains("ft/s");
    assertThat(lines).anyMatch(line -> line.startsWith("session") && line.contains("mean ft/s"));
  }

  @Test
  void csvIsTheFirstTable() throws IOException {
    takeThreeBows();
    Path out = folder.resolve("report.csv");

    Castwell.run(
        "report", "bow", "Elm", "--data", data.toString(), "--format", "csv", "--out", out + "");

    assertThat(Files.readAllLines(out))
        .hasSize(4)
        .first()
        .asString()
        .startsWith(
            "session,arrow,mass_gr,n,set_aside,mean_fps,ci95_today_fps_low,ci95_today_fps_high,ci95_repeats_fps_low,");
  }

  @Test
  void storedEnergyIsToldWithTheShots() throws IOException {
    takeThreeBows();
    take(
        "force-draw",
        """
        bow,state_on,draw_length_in,draw_force_lb,let_down_lb
        Elm,2026-04-01,8,0,0
        Elm,2026-04-01,14,22,21
        Elm,2026-04-01,20,35,33.5
        Elm,2026-04-01,27,50,50
        """);

    JsonNode curve = report("bow", "Elm").path("force_draw");

    // By hand: 6 x 11 + 6 x 28.5 + 7 x 42.5 in lb, over 12 in a foot.
    assertThat(curve.path("stored_energy_trapezoid_ftlbf").asDouble())
        .isCloseTo(534.5 / 12, within(1e-9));
    assertThat(curve.path("arrows").get(0).path("efficiency_percent").asDouble())
        .isBetween(40.0, 60.0);
    assertThat(curve.path("hysteresis_percent").asDouble()).isBetween(1.0, 6.0);
  }

  @Test
  void theRackGoesOutAndComesInAgain() throws IOException {
    take(
        "force-draw",
        """
        bow,state_on,draw_length_in,draw_force_lb,let_down_lb
        Elm,2026-04-01,8,0,
        Elm,2026-04-01,14,22,
        Elm,2026-04-01,27,50,
        """);
    Path other = folder.resolve("other");

    for (String what : List.of("bows", "arrows", "force-draw")) {
      Path first = exported(data, what);
      assertThat(
              Castwell.run("import", "--data", other.toString(), "--what", what, first.toString()))
          .isZero();
      assertThat(exported(other, what)).hasSameTextualContentAs(first);
    }
  }

  private Path exported(Path from, String what) {
    Path out = folder.resolve(from.getFileName() + "-" + what + ".csv");
    assertThat(
            Castwell.run(
                "export", "--data", from.toString(), "--what", what, "--out", out.toString()))
        .isZero();
    return out;
  }

  @Test
  void whatCantBeAnsweredIsSaidInOneSentence() throws IOException {
    takeExactSpeeds();

    refused("There is no bow named Oak", "bow", "Oak");
    refused("Ash has no state of 2020-01-01", "bow", "Ash", "--state", "2020-01-01");
    refused(
        "Ash has no shot that counts on 2026-04-11",
        "rework",
        "Ash",
        "--before",
        "2026-04-11",
        "--after",
        "2026-04-10");
    refused(
        "Before and after are the same shots",
        "rework",
        "Ash",
        "--before",
        "2026-04-10",
        "--after",
        "2026-04-10");
    refused("There is no session named x", "session", "x");
    refused("Say what to reach in one way", "reach");
    refused("A power lies between", "plan", "Ash", "--power", "2", "--sd-fps", "1");
    refused("Say which report");
  }

  private void refused(String sentence, String... arguments) {
    List<String> all = new ArrayList<>(List.of("report"));
    all.addAll(List.of(arguments));
    all.addAll(List.of("--data", data.toString()));
    Outcome outcome = Program.run(all.toArray(String[]::new));
    assertThat(outcome.exitCode()).as(outcome.err()).isEqualTo(2);
    assertThat(outcome.err()).startsWith("castwell: ").contains(sentence).hasLineCount(1);
  }
}
