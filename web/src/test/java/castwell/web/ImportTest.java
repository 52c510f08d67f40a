package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.web.Program.Outcome;
import castwell.web.cli.Castwell;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What somebody wrote down, taken in at the command line. */
@Tag("slow")
@Timeout(300)
class ImportTest {
  private static final String BOWS =
      "bow,state_on,draw_weight_lb,draw_length_in\nAsh,2026-04-01,52,27\nAsh,2026-05-01,50,27\n";

  /** The last can't be what the recording's arrows are: the rules say so. */
  private static final String ARROWS = "arrow,mass_gr,length_in\nA1,500,\nA2,600,\nStub,400,20\n";

  private static final List<String> KEPT =
      List.of(
          "shot_id",
          "fired_at",
          "station",
          "session",
          "end",
          "bow",
          "bow_state",
          "arrow",
          "counts",
          "speed_fps",
          "speed_u_own_fps",
          "speed_u_common_fps",
          "reason",
          "note");

  @TempDir Path folder;

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private String[] into(Path data, String what, Path csv, String... more) {
    List<String> all =
        new ArrayList<>(List.of("import", "--data", data.toString(), "--what", what));
    all.add(csv.toString());
    all.addAll(List.of(more));
    return all.toArray(String[]::new);
  }

  private Path withRack(String name) throws IOException {
    Path data = folder.resolve(name);
    assertThat(Castwell.run(into(data, "bows", write("bows.csv", BOWS)))).isZero();
    assertThat(Castwell.run(into(data, "arrows", write("arrows.csv", ARROWS)))).isZero();
    return data;
  }

  private List<CSVRecord> shots(Path data) throws IOException {
    try (CSVParser parser =
        CSVParser.parse(
            Files.readString(exported(data)), CSVFormat.RFC4180.builder().setHeader().get())) {
      return parser.getRecords();
    }
  }

  private Path exported(Path data) {
    Path out = folder.resolve(data.getFileName() + "-shots.csv");
    assertThat(Castwell.run("export", "--data", data.toString(), "--out", out.toString())).isZero();
    return out;
  }

  @Test
  void itSaysWhatBecameOfASheet() throws IOException {
    Path data = withRack("data");
    Path csv =
        write(
            "paper.csv",
            "Bow;Arrow;Speed;colour;counts\nAsh;A1;150,5;red;\nAsh;A2;141;blue;yes\nAsh;A2;;;no\n");
    Outcome outcome =
        Program.run(
            into(
                data,
                "shots",
                csv,
                "--map",
                "Speed=speed_fps",
                "--own-fps",
                "0.5",
                "--common-percent",
                "1"));
    assertThat(outcome.exitCode()).as("%s", outcome).isZero();
    assertThat(outcome.out())
        .isEqualTo(
            "3 shots taken in, 1 set aside, 0 already there: castwell report bow NAME says what they mean.\n");
    assertThat(outcome.err()).isEqualTo("castwell: Not read in paper.csv: colour.\n");
    CSVRecord first = shots(data).get(0);
    assertThat(first.get("speed_fps")).isEqualTo("150.5");
    assertThat(first.get("speed_u_own_fps")).isEqualTo("0.5");
    assertThat(first.get("speed_u_common_fps")).isEqualTo("1.505");
    assertThat(first.get("entered")).isEqualTo("by-hand");
  }

  @Test
  void badLinesAreNamedAndNothingIsStored() throws IOException {
    Path data = withRack("data");
    Path csv = write("paper.csv", "bow,arrow,speed_fps\nAsh,A1,150\nEsh,A1,150\nAsh,A1,fast\n");
    Outcome outcome = Program.run(into(data, "shots", csv));
    assertThat(outcome.exitCode()).isEqualTo(2);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err())
        .isEqualTo(
            """
            line 3: bow "Esh" isn't on the rack: mend it if Ash is meant, or import the bows first.
            line 4: speed_fps "fast" isn't a number: write one such as 152.3.
            castwell: 2 lines of paper.csv can't be taken in, so nothing was: mend them and import again.
            """);
    assertThat(shots(data)).isEmpty();
  }

  @Test
  void fiftyBadLinesAreEnoughToSeeWhatIsWrong() throws IOException {
    Path csv = write("paper.csv", "arrow,mass_gr\n" + "A,heavy\n".repeat(60));
    Outcome outcome = Program.run(into(folder.resolve("data"), "arrows", csv));
    assertThat(outcome.exitCode()).isEqualTo(2);
    assertThat(outcome.err().lines()).hasSize(52).contains("and 10 more");
  }

  @Test
  void aFileThatCantBeReadIsRefusedInASentence() throws IOException {
    Path data = folder.resolve("data");
    Path latin =
        Files.write(
            folder.resolve("latin.csv"),
            "arrow,mass_gr\nPf\u00e4il,500\n".getBytes(StandardCharsets.ISO_8859_1));
    assertRefused(Program.run(into(data, "arrows", latin)), "latin.csv isn't text in UTF-8");
    assertRefused(Program.run(into(data, "arrows", folder.resolve("none.csv"))), "none.csv");
    assertRefused(
        Program.run(into(data, "shots", write("a.csv", "bow,arrow\nAsh,A1\n"))), "speed_fps");
    assertRefused(Program.run(into(data, "quivers", latin)), "--help");
    assertRefused(
        Program.run(into(data, "shots", latin, "--common-percent", "200")), "--common-percent");
    assertRefused(Program.run("import", latin.toString()), "--what");
  }

  private static void assertRefused(Outcome outcome, String told) {
    assertThat(outcome.exitCode()).as("%s", outcome).isEqualTo(2);
    assertThat(outcome.err())
        .matches("castwell: [^\\n]{10,600}[.\"]\\n") // one line
        .contains(told);
  }

  @Test
  void whatWasExportedComesBackAsItWas() throws IOException {
    Path here = withRack("here");
    Recordings.replayInto(here);
    judge(here);
    Path paper =
        write(
            "paper.csv",
            "bow,arrow,speed_mps,fired_at,session,end,counts,reason,note\nAsh,A1,45.1,2026-05-03T10:00:00.25,windy,3,,,\"gusts, mostly\"\nAsh,A2,,2026-05-03T10:01,windy,3,no,short draw,\n");
    assertThat(Castwell.run(into(here, "shots", paper))).isZero();

    Path there = withRack("there");
    Outcome taken = Program.run(into(there, "shots", exported(here)));
    assertThat(taken.err()).isEmpty();
    assertThat(taken.out()).startsWith("7 shots taken in, 3 set aside, 0 already there");

    List<Map<String, String>> before = kept(here);
    assertThat(before).hasSize(7);
    assertThat(before).extracting(row -> row.get("counts")).contains("true", "false");
    assertThat(before).extracting(row -> row.get("bow")).contains("Ash", "");
    assertThat(kept(there)).containsExactlyElementsOf(before);

    assertThat(Program.run(into(here, "shots", exported(here))).out())
        .startsWith("0 shots taken in, 0 set aside, 7 already there");
    assertThat(kept(here)).isEqualTo(before);
  }

  /** Of the recording's five: one never tagged, one of the wrong length, one aside, one back. */
  private static void judge(Path data) {
    try (Served served = Served.withoutBoard(data, Recordings.STATION)) {
      List<String> ids =
          Asked.get(served.at("/api/sessions/2026-05-02/shots")).json().findValuesAsText("shot_id");
      for (String id : ids.subList(1, 5)) {
        retag(served, id, "A1");
      }
      retag(served, ids.get(2), "Stub");
      retag(served, ids.get(4), "Stub");
      decide(served, ids.get(3), false, "short draw");
      decide(served, ids.get(4), true, "It was cut");
    }
  }

  private static void retag(Served served, String id, String arrow) {
    String body = "{\"bow\":\"Ash\",\"arrow\":\"%s\"}".formatted(arrow);
    assertThat(Asked.send("POST", served.at("/api/shots/" + id + "/tags"), body).status())
        .isEqualTo(200);
  }

  private static void decide(Served served, String id, boolean counts, String reason) {
    String body = "{\"counts\":%s,\"reason\":\"%s\"}".formatted(counts, reason);
    assertThat(Asked.send("POST", served.at("/api/shots/" + id + "/decision"), body).status())
        .isEqualTo(200);
  }

  private List<Map<String, String>> kept(Path data) throws IOException {
    return shots(data).stream()
        .map(
            row -> {
              Map<String, String> kept = row.toMap();
              kept.keySet().retainAll(KEPT);
              assertThat(kept).hasSize(KEPT.size());
              return kept;
            })
        .toList();
  }
}
