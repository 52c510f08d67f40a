package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An edge that the gates never saw: its passage is one all the same, and the next its own. */
class MissingEdgeTest {
  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void leavesOnePassageOfThree(int place) {
    List<Stamp> half = gates.arrowUnseenAt(5, place);
    host.beat(4, 0).hear(half).until(5.3);
    assertThat(host.given()).containsExactly(Truth.whole(half));
    host.beat(6, 3).beat(7, 3).until(8).close(false);
    assertThat(host.given()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void leavesTheArrow300MsBehindAlone(int place) {
    List<Stamp> half = gates.arrowUnseenAt(5, place);
    List<Stamp> next = gates.arrow(5.3);
    host.beat(4, 0).hear(half).hear(next).until(8);
    assertThat(host.given()).containsExactly(Truth.whole(half), Truth.whole(next));
  }

  @Test
  void atGateBMakesAPassageOfGateAAlone() {
    oneGate(1, 3);
  }

  @Test
  void atGateAMakesAPassageOfGateBAlone() {
    oneGate(0, 2);
  }

  private void oneGate(Integer... unseen) {
    List<Stamp> half = gates.arrowUnseenAt(5, unseen);
    List<Stamp> next = gates.arrow(5.3);
    host.beat(4, 0).hear(half).hear(next).until(8);
    assertThat(half).hasSize(2);
    assertThat(host.given()).containsExactly(Truth.whole(half), Truth.whole(next));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void ofAllButOneIsAPassageToo(int seen) {
    Integer[] unseen = List.of(0, 1, 2, 3).stream().filter(p -> p != seen).toArray(Integer[]::new);
    List<Stamp> one = gates.arrowUnseenAt(5, unseen);
    host.beat(4, 0).hear(one).until(8);
    assertThat(host.given()).containsExactly(Truth.whole(one));
  }
}
