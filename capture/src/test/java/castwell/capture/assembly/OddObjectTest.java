package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is no clean arrow is one passage all the same. */
class OddObjectTest {
  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();

  private void isOnePassage(List<Stamp> object) {
    List<Stamp> next = gates.arrow(5.8);
    host.beat(4, 0).hear(object).hear(next).until(8);
    assertThat(host.given()).containsExactly(Truth.whole(object), Truth.whole(next));
  }

  @ParameterizedTest
  @ValueSource(doubles = {130, 20, 12, 7, 4})
  void fastOrSlow(double speedMps) {
    isOnePassage(gates.object(5, speedMps, 0.74));
  }

  @ParameterizedTest
  @ValueSource(doubles = {20, 50, 130})
  void tooShortToReachGateBBeforeItLeftGateA(double speedMps) {
    isOnePassage(gates.object(5, speedMps, 0.02));
  }

  @Test
  void gatesCrossedInTheWrongOrder() {
    isOnePassage(gates.backwards(5));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void twoEdgesThatFellTogether(int place) {
    isOnePassage(gates.arrowMergedAt(5, place));
  }
}
