package castwell.capture.health;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.English;
import castwell.capture.device.PortSpec;
import castwell.capture.device.PtyPeer;
import castwell.capture.device.SerialPorts;
import castwell.capture.station.LinkState.State;
import castwell.capture.wire.Crc16;
import castwell.capture.wire.Fault;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Ports opened and listened to for a moment, on real pseudo-terminals. */
@Timeout(300)
class PortTrialTest {
  @TempDir Path folder;

  private static String line(String body) {
    byte[] bytes = body.getBytes(StandardCharsets.US_ASCII);
    return "$%s*%s\r\n"
        .formatted(body, String.format(Locale.ROOT, "%04X", Crc16.of(bytes, 0, bytes.length)));
  }

  private static String beats() {
    StringBuilder lines = new StringBuilder();
    for (int i = 1; i <= 3; i++) {
      lines.append(line("H,%d,7,%d,0,4,0,0,CC,812,807,5012,,,".formatted(i, i * 2_000_000L)));
    }
    return lines.toString();
  }

  private PortTrial trial(Path path) {
    return trial(path, () -> System.nanoTime() / 1_000);
  }

  private PortTrial trial(Path path, LongSupplier micros) {
    PortTrial trial = new PortTrial(Clock.systemUTC(), micros);
    SerialPorts ports = new SerialPorts(() -> System.nanoTime() / 1_000);
    trial.listen("range", ports.reserve(new PortSpec.ByPath(path.toString())));
    return trial;
  }

  @Test
  void aBoardThatBeatsIsHeardAndTheRestIsCounted() {
    String identity = line("I,0,1,sim-1,gate-1,7,2000000,2,0,0,64,P");
    try (PtyPeer board =
        PtyPeer.at(folder.resolve("board"), asked -> identity + "noise\r\n" + beats())) {
      PortTrial trial = trial(board.path());
      assertThat(trial.link("range").orElseThrow().state()).isEqualTo(State.ONLINE);
      assertThat(trial.link("range").orElseThrow().device()).hasValue("gate-1");
      assertThat(trial.beats("range")).hasSize(3);
      assertThat(trial.beats("range").get(2).beat().surroundings().lightA()).hasValue(812);
      assertThat(trial.faults("range").orElseThrow().recent()).containsKey(Fault.GARBAGE);
      assertThat(board.heard()).isEqualTo("?\n"); // asked, and nothing else
    }
  }

  @Test
  void aSilentPortIsToldAsOffline() {
    try (PtyPeer silent = PtyPeer.at(folder.resolve("silent"))) {
      assertThat(trial(silent.path()).link("range").orElseThrow().state()).isEqualTo(State.OFFLINE);
    }
  }

  @Test
  void anAbsentPortSaysWhatToDo() {
    Path absent = folder.resolve("absent");
    PortTrial trial = trial(absent);
    assertThat(trial.link("range").orElseThrow().state()).isEqualTo(State.SEARCHING);
    assertThat(English.say(trial.link("range").orElseThrow().sentence()))
        .contains(absent.toString(), "plug");
    assertThat(trial.beats("range")).isEmpty();
  }
}
