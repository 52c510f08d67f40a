package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A lamp that flickers at 120 Hz never leaves the gate quiet, and is too slow for a flood. */
@Tag("slow")
@Timeout(300)
class FlickerTest {
  private static final int SECONDS = 30;

  @Test
  void isCutToPiecesAndTheArrowAfterItIsRead() {
    PretendGates gates = new PretendGates();
    Host host = new Host().beat(0, 0);
    for (int edge = 0; edge < SECONDS * 240; edge++) {
      EdgeKind kind = edge % 2 == 0 ? EdgeKind.BLOCKED : EdgeKind.CLEAR;
      host.hear(List.of(gates.single(1 + edge / 240.0, Gate.A, kind)));
    }
    assertThat(host.given()).hasSizeBetween(SECONDS - 2, SECONDS + 2);
    assertThat(host.given()).allMatch(piece -> piece.edges().size() < 250);
    List<Stamp> arrow = gates.arrow(SECONDS + 3);
    host.hear(arrow).until(SECONDS + 4);
    assertThat(host.given()).endsWith(Truth.whole(arrow));
  }
}
