package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.web.Program;
import castwell.web.cli.Castwell;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What the rig writes down is a recording: the same for the same script, and it replays. */
@Tag("rig")
@Timeout(300)
class RigRecordingTest {
  @TempDir Path folder;

  private static final double[] FPS = {152.5, 181.25, 168};

  private RigRun run() {
    Script script = new Script();
    for (int i = 0; i < FPS.length; i++) {
      script.arrow(2 + i, FPS[i], 0.7);
    }
    return RigRun.of(script.at(6, "end"), folder);
  }

  @Test
  void twoRunsOfOneScriptGiveTheSameBytes() throws IOException {
    assertThat(Files.readAllBytes(run().recording()))
        .isEqualTo(Files.readAllBytes(run().recording()));
  }

  @Test
  void replayedItGivesTheScriptsSpeeds() throws IOException {
    String data = folder.resolve("data").toString();
    assertThat(Castwell.run("replay", "--data", data, run().recording().toString())).isZero();
    String csv = Program.run("export", "--data", data).out();
    CSVFormat headed = CSVFormat.RFC4180.builder().setHeader().get();
    try (CSVParser rows = CSVParser.parse(new StringReader(csv), headed)) {
      int i = 0;
      for (CSVRecord row : rows) {
        assertThat(row.get("counts")).as(row.get("reason")).isEqualTo("true");
        assertThat(Double.parseDouble(row.get("speed_fps"))).isCloseTo(FPS[i++], within(0.1));
      }
      assertThat(i).isEqualTo(FPS.length);
    }
  }
}
