package castwell.web;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.wire.Crc16;
import castwell.web.Program.Outcome;
import castwell.web.cli.Castwell;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Two lanes shot at the same time, with the same numbers: their exports are kept apart. */
@Tag("slow")
@Timeout(300)
class LanesExportTest {
  @TempDir static Path folder;

  @BeforeAll
  static void takeIn() throws IOException {
    Recordings.replayInto(folder);
    Path other = Files.writeString(folder.resolve("lane-2.rec"), onLaneTwo(), ISO_8859_1);
    assertThat(Castwell.run("replay", "--data", folder.toString(), other.toString())).isZero();
  }

  /** The same lines from a board of another name. */
  private static String onLaneTwo() throws IOException {
    String body = "I,61033,1,sim-1.0,gate-2,7,2000000,2,0,0,64,P";
    byte[] bytes = body.getBytes(ISO_8859_1);
    String crc = String.format(Locale.ROOT, "%04X", Crc16.of(bytes, 0, bytes.length));
    return Files.readString(Recordings.cleanFive(), ISO_8859_1)
        .replace("# name: clean-five", "# name: lane-2")
        .replaceFirst("\\$I,61033.*", "\\$" + body + "*" + crc);
  }

  private static Outcome export(String... more) {
    String[] all = new String[more.length + 3];
    List.of("export", "--data", folder.toString()).toArray(all);
    System.arraycopy(more, 0, all, 3, more.length);
    return Program.run(all);
  }

  private static List<CSVRecord> rows(Outcome outcome) throws IOException {
    assertThat(outcome.exitCode()).as("%s", outcome).isZero();
    CSVFormat headed = CSVFormat.RFC4180.builder().setHeader().get();
    try (CSVParser parser = CSVParser.parse(outcome.out(), headed)) {
      return parser.getRecords();
    }
  }

  private static Set<String> values(List<CSVRecord> rows, String column) {
    return rows.stream().map(row -> row.get(column)).collect(Collectors.toSet());
  }

  @ParameterizedTest
  @CsvSource({"shots,5", "edges,20", "figures,5"})
  void eachIsNarrowedToAStation(String what, int count) throws IOException {
    assertThat(rows(export("--what", what))).hasSize(2 * count);
    List<CSVRecord> narrowed = rows(export("--what", what, "--station", "lane-2"));
    assertThat(narrowed).hasSize(count);
    assertThat(values(narrowed, "station")).containsExactly("lane-2");
    assertThat(values(narrowed, "shot_id")).hasSize(5).allMatch(id -> id.startsWith("gate-2.7."));
  }

  @Test
  void noSessionIsSharedThoughTheyWereShotAtTheSameTime() throws IOException {
    Set<String> one = values(rows(export("--station", Recordings.STATION)), "session");
    Set<String> two = values(rows(export("--station", "lane-2")), "session");
    assertThat(one).hasSize(1).doesNotContainAnyElementsOf(two);
    assertThat(two).hasSize(1);
  }

  @Test
  void aStationWhereNobodyShotIsRefused() {
    Outcome outcome = export("--station", "lane-3");
    assertThat(outcome.exitCode()).isEqualTo(2);
    assertThat(outcome.err())
        .isEqualTo(
            "castwell: --station: nothing was shot at a station named lane-3; there are clean-five, lane-2.\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"bows", "arrows", "force-draw"})
  void theRackBelongsToNoStation(String what) {
    Outcome outcome = export("--what", what, "--station", "lane-2");
    assertThat(outcome.exitCode()).isEqualTo(2);
    assertThat(outcome.err()).contains("--station narrows shots, edges, figures and budget");
  }
}
