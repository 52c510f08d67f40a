package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passage;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The program was ended and started again while the board kept running. */
class RestoredPassageTest {
  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();
  private final List<Stamp> first = gates.arrow(2);
  private final List<Stamp> second = gates.arrow(5);

  private void restore(Passage... passages) {
    List<Edge> edges = List.of(passages).stream().flatMap(p -> p.edges().stream()).toList();
    host.assembler.restore(edges, List.of(passages));
  }

  @Test
  void isNotGivenOutAgain() {
    restore(Truth.whole(first), Truth.whole(second));
    host.beat(60, 8).hearAt(61, first).hearAt(61, second).until(63).close(false);
    assertThat(host.given()).isEmpty();
  }

  @Test
  void isAmendedByTheEdgeThatWasLost() {
    restore(Truth.whole(first), Truth.without(second, Set.of(6)));
    host.beat(60, 8).hearAt(61, second).until(63);
    assertThat(host.given()).containsExactly(Truth.whole(second));
  }

  @Test
  void leavesEdgesStampedMeanwhileToBeAskedFor() {
    restore(Truth.whole(first));
    host.beat(60, 8);
    assertThat(host.wanted()).hasValue(5);
    host.hearAt(60.1, second).until(62);
    assertThat(host.given()).containsExactly(Truth.whole(second));
  }

  @Test
  void halfStoredIsMadeWhole() {
    restore(Truth.whole(first), Truth.whole(second.subList(0, 2)));
    host.beat(60, 8).hearAt(60.1, second).until(62);
    assertThat(host.shots()).containsExactly(Truth.whole(second));
  }
}
