package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.Until;
import castwell.web.HarriedRange;
import castwell.web.Program;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The daemon in a process of its own at the firmware's serial line: what the script shot is in the
 * store, with the script's speeds. The cable is pulled for so many seconds by {@code
 * -Dcastwell.pulled=20}.
 */
@Tag("rig")
@Timeout(300)
class DaemonAtTheBoardTest {
  private static final double PULLED_SECONDS = Integer.getInteger("castwell.pulled", 3);

  /**
   * Of the speed: the gates are the script's to the nanometre, the ticks' rate isn't known well.
   */
  private static final double TOLERANCE = 2e-3;

  @TempDir Path folder;

  private final Script script = new Script();
  private final Map<String, Double> shots = new LinkedHashMap<>();
  private final Set<String> misreads = new TreeSet<>();
  private int boot;
  private int edges;

  private void shoot(double at, double fps) {
    shots.put("gate-1.%d.%d".formatted(boot, edges + 1), fps);
    script.arrow(at, fps, 0.72);
    edges += 4;
  }

  /** Something else, with so many edges. */
  private void misread(int itsEdges) {
    misreads.add("gate-1.%d.%d".formatted(boot, edges + 1));
    edges += itsEdges;
  }

  private void whatHappens() {
    shoot(1, 171.5); // nobody listens yet
    shoot(3, 168.25);
    misread(2);
    script.at(3.6, "A blocked").at(3.61, "A clear"); // a leaf
    misread(4);
    script.arrow(4.2, 160, 0.1); // as short as no arrow is
    shoot(4.8, 140);
    script.at(7.3, "hang");
    boot++;
    edges = 0;
    shoot(8.6, 150.75);
    script.at(8.8, "key down").at(9, "key up");
    script.at(9.5, "unplug");
    for (int i = 0; i < 10; i++) {
      shoot(9.8 + i * (PULLED_SECONDS - 0.5) / 10, 172 + i);
    }
    script.at(9.5 + PULLED_SECONDS, "plug");
    shoot(10.1 + PULLED_SECONDS, 190);
    script.at(90 + PULLED_SECONDS, "end");
  }

  @Test
  void whatWasShotIsInTheStoreThoughTheBoardHungAndTheCableWasPulled() throws Exception {
    whatHappens();
    Path data = Files.createDirectories(folder.resolve("data"));
    Files.writeString(
        data.resolve("castwell.toml"),
        "[[station]]\nname = \"range\"\nport = \"%s\"\n".formatted(RigAtAPort.portIn(folder)));
    try (Program daemon =
        Program.lasting(
            Until.PATIENCE.multipliedBy(2), "run", "--data", data.toString(), "--http", "0")) {
      daemon.line(); // the board's clock is the wall's: it can't wait for a program that starts
      try (RigAtAPort rig = new RigAtAPort(script, folder)) {
        Until.holds(
            "every shot " + rig.said(),
            () -> HarriedRange.stored(data).containsAll(shots.keySet()));
        daemon.terminate();
        assertThat(daemon.outcome().exitCode()).isZero();
      }
    }
    Map<String, CSVRecord> rows = exported(data);
    Set<String> all = new TreeSet<>(shots.keySet());
    all.addAll(misreads);
    assertThat(new TreeSet<>(rows.keySet())).isEqualTo(all);
    shots.forEach(
        (id, fps) -> {
          assertThat(rows.get(id).get("counts"))
              .as(id + ": " + rows.get(id).get("reason"))
              .isEqualTo("true");
          assertThat(Double.parseDouble(rows.get(id).get("speed_fps")))
              .as(id)
              .isCloseTo(fps, within(fps * TOLERANCE));
          assertThat(Double.parseDouble(rows.get(id).get("length_mm"))).isCloseTo(720, within(3.0));
        });
    misreads.forEach(id -> assertThat(rows.get(id).get("counts")).as(id).isEqualTo("false"));
  }

  private static Map<String, CSVRecord> exported(Path data) throws IOException {
    Program.Outcome csv = Program.run("export", "--data", data.toString());
    assertThat(csv.exitCode()).isZero();
    CSVFormat headed = CSVFormat.RFC4180.builder().setHeader().get();
    try (CSVParser parser = CSVParser.parse(new StringReader(csv.out()), headed)) {
      return parser.getRecords().stream()
          .collect(Collectors.toMap(row -> row.get("shot_id"), row -> row));
    }
  }
}
