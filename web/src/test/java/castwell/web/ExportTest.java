package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.web.Program.Outcome;
import castwell.web.cli.Castwell;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A recording replayed, and what leaves the program as tables. */
@Tag("slow")
@Timeout(300)
class ExportTest {
  private static final String FIRST_COLUMNS =
      "shot_id,fired_at,device,boot,first_edge,session,end,bow,bow_state,arrow,arrow_mass_gr,"
          + "draw_weight_lb,draw_length_in,counts,verdict,reason,speed_fps,speed_u_own_fps,"
          + "speed_u_common_fps,front_fps,tail_fps,length_mm,kinetic_energy_ftlbf,"
          + "momentum_slug_fps,grains_per_pound";

  /** The speeds that the recording was made from: first edge to ft/s. */
  private static final Map<String, Double> TRUTH =
      Map.of("1", 177.752282, "5", 176.585081, "9", 135.023545, "13", 171.645255, "17", 150.511750);

  @TempDir static Path folder;

  @BeforeAll
  static void takeIn() {
    Recordings.replayInto(folder);
  }

  private static String exported(Path from, String... more) throws IOException {
    Path out = Files.createTempDirectory(folder, "export").resolve("table");
    String[] all = new String[more.length + 5];
    List.of("export", "--data", from.toString(), "--out", out.toString()).toArray(all);
    System.arraycopy(more, 0, all, 5, more.length);
    assertThat(Castwell.run(all)).isZero();
    return Files.readString(out);
  }

  private static List<CSVRecord> rows(String csv) throws IOException {
    CSVFormat headed = CSVFormat.RFC4180.builder().setHeader().get();
    try (CSVParser parser = CSVParser.parse(csv, headed)) {
      return parser.getRecords();
    }
  }

  @Test
  void shotsComeOutWithTheirColumnsAndTheRecordingsSpeeds() throws IOException {
    Outcome printed = Program.run("export", "--data", folder.toString());
    assertThat(printed.exitCode()).isZero();
    assertThat(printed.err()).isEmpty();
    assertThat(printed.out()).startsWith(FIRST_COLUMNS + ",");
    List<CSVRecord> rows = rows(printed.out());
    assertThat(rows).extracting(row -> row.get("first_edge")).hasSameElementsAs(TRUTH.keySet());
    for (CSVRecord row : rows) {
      assertThat(row.get("counts")).isEqualTo("true");
      assertThat(row.get("verdict")).isEqualTo("clean");
      assertThat(row.get("arrow")).isEmpty();
      double truth = TRUTH.get(row.get("first_edge"));
      assertThat(Double.parseDouble(row.get("speed_fps"))).isCloseTo(truth, within(truth * 1e-4));
    }
    assertThat(exported(folder)).isEqualTo(printed.out());
  }

  @Test
  void replayedTwiceNothingIsAdded() throws IOException {
    Path twice = Files.createTempDirectory(folder, "twice");
    Recordings.replayInto(twice);
    String once = exported(twice);
    String edges = exported(twice, "--what", "edges");
    Recordings.replayInto(twice);
    assertThat(exported(twice)).isEqualTo(once);
    assertThat(exported(twice, "--what", "edges")).isEqualTo(edges);
  }

  @Test
  void jsonCarriesTheSameAsCsv() throws IOException {
    JsonNode json = JsonMapper.builder().build().readTree(exported(folder, "--format", "json"));
    List<CSVRecord> rows = rows(exported(folder));
    assertThat(json).hasSameSizeAs(rows);
    for (int i = 0; i < rows.size(); i++) {
      for (Map.Entry<String, String> cell : rows.get(i).toMap().entrySet()) {
        JsonNode value = json.get(i).path(cell.getKey());
        assertThat(value.isMissingNode()).as(cell.getKey()).isFalse();
        assertThat(value.isNull() ? "" : value.asText()).isEqualTo(cell.getValue());
      }
    }
  }

  @Test
  void edgesAreTheRecordingsOwnTicks() throws IOException {
    List<String> recorded =
        Files.readAllLines(Recordings.cleanFive()).stream()
            .filter(line -> line.contains(" $E,"))
            .map(line -> line.substring(line.indexOf('$')).split(","))
            .map(field -> String.join(" ", field[2], field[3], field[4], field[5], field[6]))
            .toList();
    assertThat(rows(exported(folder, "--what", "edges")))
        .extracting(
            row ->
                String.join(
                    " ",
                    row.get("boot"),
                    row.get("edge"),
                    row.get("gate"),
                    row.get("kind"),
                    row.get("ticks")))
        .containsExactlyInAnyOrderElementsOf(recorded)
        .hasSize(20);
  }

  @Test
  void theRackComesOutByTheHeadingsThatAnImportReads() throws IOException {
    assertThat(exported(folder, "--what", "bows"))
        .isEqualToNormalizingNewlines(
            "bow,state_on,draw_weight_lb,draw_length_in,nock_to_nock_in,string_follow_in,"
                + "brace_height_in,mass_lb,wood,tip_width_mm,string_mass_gr,tiller_mm,tip_thickness_mm,done\n");
    assertThat(exported(folder, "--what", "arrows"))
        .isEqualToNormalizingNewlines(
            "arrow,mass_gr,length_in,diameter_in,spine_mil,spine_span_in,spine_weight_lb,point,note\n");
    assertThat(exported(folder, "--what", "force-draw"))
        .isEqualToNormalizingNewlines("bow,state_on,draw_length_in,draw_force_lb,let_down_lb\n");
  }

  @Test
  void aStateAnArrowAndAPointAreARowEach() throws IOException {
    Path rack = Files.createTempDirectory(folder, "rack");
    try (Served served = Served.withoutBoard(rack, "range")) {
      for (String[] sent :
          new String[][] {
            {
              "/api/bows",
              "{'name':'Rowan','state_on':'2026-04-01','draw_weight_lb':52,'draw_length_in':27,'nock_to_nock_in':66,'string_follow_in':-0.5,'brace_height_in':6,'mass_lb':1.25,'wood':'elm, smoked','tip_width_mm':12,'string_mass_gr':90,'tiller_mm':-3,'tip_thickness_mm':11.5,'done':'tillered'}"
            },
            {
              "/api/bows/Rowan/states",
              "{'state_on':'2026-05-01','draw_weight_lb':50,'draw_length_in':27}"
            },
            {
              "/api/arrows",
              "{'name':'Rush','mass_gr':500,'spine_mil':500,'point':'field, 125 gr','note':'old'}"
            },
            {
              "/api/bows/Rowan/force-draw",
              "{'state_on':'2026-04-01','points':[{'draw_length_in':8,'draw_force_lb':0},{'draw_length_in':18,'draw_force_lb':30,'let_down_lb':28},{'draw_length_in':27,'draw_force_lb':52,'let_down_lb':52}]}"
            }
          }) {
        Asked.send("POST", served.at(sent[0]), sent[1].replace('\'', '"'));
      }
    }
    assertThat(exported(rack, "--what", "bows").lines().skip(1))
        .containsExactly(
            "Rowan,2026-04-01,52,27,66,-0.5,6,1.25,\"elm, smoked\",12,90,-3,11.5,tillered",
            "Rowan,2026-05-01,50,27,,,,,,,,,,");
    assertThat(exported(rack, "--what", "arrows").lines().skip(1))
        .containsExactly("Rush,500,,,500,28,1.94,\"field, 125 gr\",old");
    assertThat(exported(rack, "--what", "force-draw").lines().skip(1))
        .containsExactly(
            "Rowan,2026-04-01,8,0,", "Rowan,2026-04-01,18,30,28", "Rowan,2026-04-01,27,52,52");
  }

  /** Of the recording's own gates, whose spacing it tells. */
  @Test
  void theBudgetOfASpeedReadsBackTheLargestFirst() throws IOException {
    List<CSVRecord> budget = rows(exported(folder, "--what", "budget"));
    List<CSVRecord> sources =
        budget.stream().filter(row -> !row.get("source").startsWith("all")).toList();

    assertThat(sources)
        .extracting(row -> row.get("source"))
        .startsWith("trigger", "oblique-path", "gate-spacing", "rails-temperature")
        .contains("unlike-latencies", "unparallel-gates", "tick-rate", "tick", "drag-between");
    assertThat(sources)
        .extracting(row -> -Double.parseDouble(row.get("standard_u_percent")))
        .isSorted();
    double squares = 0;
    for (CSVRecord row : sources) {
      double percent = Double.parseDouble(row.get("standard_u_percent"));
      squares += percent * percent;
      assertThat(Double.parseDouble(row.get("standard_u_mps")))
          .isCloseTo(percent / 100 * Double.parseDouble(row.get("speed_mps")), within(1e-9));
      assertThat(row.get("kind"))
          .isEqualTo(List.of("trigger", "tick").contains(row.get("source")) ? "own" : "common");
      assertThat(row.get("spacing_measured")).isEqualTo("true");
    }
    assertThat(budget.get(budget.size() - 1).get("source")).isEqualTo("all");
    assertThat(Double.parseDouble(budget.get(budget.size() - 1).get("standard_u_percent")))
        .isCloseTo(Math.sqrt(squares), within(1e-9));
    assertThat(exported(folder, "--what", "budget", "--station", "clean-five"))
        .isEqualTo(exported(folder, "--what", "budget"));
  }

  @Test
  void figuresNameTheirCalibration() throws IOException {
    List<CSVRecord> figures = rows(exported(folder, "--what", "figures"));
    assertThat(figures).hasSize(5);
    for (CSVRecord figure : figures) {
      assertThat(figure.get("in_force")).isEqualTo("true");
      assertThat(figure.get("spacing_mm")).isEqualTo("609.6");
    }
  }

  @Test
  void metadataDescribesEveryColumn() throws IOException {
    Path csv = Files.createTempDirectory(folder, "csvw").resolve("shots.csv");
    assertThat(
            Castwell.run("export", "--data", folder.toString(), "--out", csv.toString(), "--csvw"))
        .isZero();
    // W3C Metadata Vocabulary for Tabular Data (2015), 5: where it is found, and what it holds
    Path beside = csv.resolveSibling("shots.csv-metadata.json");
    JsonNode metadata =
        JsonMapper.builder().build().readTree(Files.readString(beside, StandardCharsets.UTF_8));
    assertThat(metadata.path("@context").asText()).isEqualTo("http://www.w3.org/ns/csvw");
    assertThat(metadata.path("url").asText()).isEqualTo("shots.csv");
    String header = Files.readAllLines(csv).get(0);
    List<JsonNode> columns =
        StreamSupport.stream(metadata.at("/tableSchema/columns").spliterator(), false).toList();
    assertThat(columns)
        .extracting(column -> column.path("name").asText())
        .containsExactly(header.split(","));
    assertThat(columns)
        .allSatisfy(column -> assertThat(column.path("dc:description").asText()).isNotEmpty())
        .extracting(column -> column.path("datatype").asText())
        .containsOnly("string", "dateTime", "integer", "number", "boolean");
  }

  @Test
  void aReplayIsTaggedAsAsked() throws IOException {
    Path tagged = Files.createTempDirectory(folder, "tagged");
    try (Served served = Served.withoutBoard(tagged, "range")) {
      Asked.send(
          "POST",
          served.at("/api/arrows"),
          "{\"name\":\"Rush\",\"mass_gr\":500,\"length_in\":28.3}");
      Asked.send(
          "POST",
          served.at("/api/bows"),
          "{\"name\":\"Rowan\",\"draw_weight_lb\":50,\"draw_length_in\":27}");
    }
    String[] arguments = {
      "replay",
      "--data",
      tagged.toString(),
      "--bow",
      "Rowan",
      "--arrow",
      "Rush",
      Recordings.cleanFive().toString()
    };
    assertThat(Castwell.run(arguments)).isZero();
    List<CSVRecord> rows = rows(exported(tagged));
    assertThat(rows).extracting(row -> row.get("bow")).containsOnly("Rowan");
    assertThat(rows).extracting(row -> row.get("grains_per_pound")).containsOnly("10");
    // 718.99 mm is 28.3 in; 786.43 mm, at first edge 9, is not
    assertThat(rows)
        .filteredOn(row -> row.get("first_edge").equals("9"))
        .allSatisfy(
            row -> {
              assertThat(row.get("counts")).isEqualTo("false");
              assertThat(row.get("reason")).isNotEmpty();
            });
  }
}
