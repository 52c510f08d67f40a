package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FlutterTest {
  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();

  @Test
  void ofTheFletchingStaysOnePassage() {
    List<Stamp> arrow = gates.flutteringArrow(5);
    host.beat(4, 0).hear(arrow).until(6);
    assertThat(arrow).hasSize(8);
    assertThat(host.given()).containsExactly(Truth.whole(arrow));
  }

  @Test
  void thatArrivesAfterThePassageClosedAmendsIt() {
    List<Stamp> arrow = new ArrayList<>(gates.arrow(5));
    double tail = arrow.get(3).ticks() / PretendGates.HZ;
    host.beat(4, 0).hear(arrow).until(tail + 0.050);
    assertThat(host.given()).hasSize(1);
    List<Stamp> late =
        List.of(
            gates.single(tail + 0.001, Gate.B, EdgeKind.BLOCKED),
            gates.single(tail + 0.002, Gate.B, EdgeKind.CLEAR));
    host.hearAt(tail + 0.060, late).until(6);
    arrow.addAll(late);
    assertThat(host.shots()).containsExactly(Truth.whole(arrow));
  }

  @Test
  void thatArrivesAfterTheNextArrowAmendsItsOwn() {
    List<Stamp> first = gates.flutteringArrow(5);
    List<Stamp> second = gates.arrow(5.3);
    host.beat(4, 0).hear(first.subList(0, 7)).hear(second).until(5.5);
    assertThat(host.wanted()).hasValue(8);
    host.hear(first.get(7), Host.micros(5.55)).until(7);
    assertThat(host.shots()).containsExactly(Truth.whole(first), Truth.whole(second));
  }
}
