package castwell.web.notes;

import static castwell.web.notes.Notes.says;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * A gate's circuit in a circuit simulator, against what the notes say of it. Source: ngspice 39.
 */
@Tag("rig")
@Timeout(300)
class SimulatedGateTest {
  @Test
  void circuitDoesWhatTheNotesSay() throws Exception {
    String simulated = simulate();
    Map<String, List<String>> rows = Notes.table("parts.md", "what");
    assertThat(rows).hasSize(8);
    row(rows, "light S, lit", measured(simulated, "lit"));
    row(rows, "reference N", measured(simulated, "reference"));
    row(rows, "S when the gate says blocked", measured(simulated, "blocked"));
    row(rows, "S when it says clear again", measured(simulated, "clear"));
    row(rows, "gate wire in the dark", measured(simulated, "dark"));
    row(rows, "a pencil that stays is forgotten after", measured(simulated, "forgotten"));
    String front = "from a front, a step of two and a half photodiodes, to the pin";
    row(rows, front, 1e6 * measured(simulated, "front_delay"));
    row(rows, "from such a tail to the pin", 1e6 * measured(simulated, "tail_delay"));
    double settled = measured(simulated, "settled");
    double step = measured(simulated, "lit") - settled;
    assertThat(settled - measured(simulated, "overshoot")).isLessThan(0.001 * step);
  }

  private static void row(Map<String, List<String>> rows, String row, double figure) {
    assertThat(rows).containsKey(row);
    says(rows.get(row).get(0), figure);
  }

  private static double measured(String simulated, String name) {
    Matcher figure = Pattern.compile("(?m)^" + name + "\\s*=\\s*(\\S+)").matcher(simulated);
    assertThat(figure.find()).as("%s in: %s", name, simulated).isTrue();
    return Double.parseDouble(figure.group(1));
  }

  private static String simulate() throws Exception {
    Process ngspice =
        new ProcessBuilder("ngspice", "-b", "gate-circuit.cir")
            .directory(Notes.FOLDER.toFile())
            .redirectErrorStream(true)
            .start();
    ngspice.getOutputStream().close();
    String said = new String(ngspice.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(ngspice.waitFor(Until.PATIENCE.toSeconds(), TimeUnit.SECONDS)).isTrue();
    return said;
  }
}
