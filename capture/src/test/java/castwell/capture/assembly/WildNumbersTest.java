package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A board whose numbers leap: no amount of holes may exhaust the host. */
@Timeout(300)
class WildNumbersTest {
  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();

  @Test
  void aBeatThatCountsToTheEndOfNumbers() {
    List<Stamp> arrow = gates.arrow(5);
    host.beat(4, 0).hear(arrow).beat(6, Integer.MAX_VALUE).until(7);
    assertThat(host.shots()).contains(Truth.whole(arrow));
    host.missing(8, 1, Integer.MAX_VALUE).until(9).close(false);
    assertThat(host.wanted()).isEmpty();
  }

  @Test
  void anEdgeAtTheEndOfNumbers() {
    List<Stamp> arrow = gates.arrow(5);
    host.beat(4, 0).hear(arrow);
    Stamp wild = new Stamp(Integer.MAX_VALUE, Gate.A, EdgeKind.BLOCKED, 20_000_000);
    host.hear(wild, Host.micros(10)).until(11);
    assertThat(host.shots()).contains(Truth.whole(arrow));
    assertThat(host.given().get(host.given().size() - 1).lastEdge()).isEqualTo(wild.number());
  }

  /** Else the store would hold a passage that lacks two thousand million edges. */
  @Test
  void aPassageWhoseNumbersLeapIsTwo() {
    List<Stamp> arrow = gates.arrow(5);
    Stamp last = arrow.get(3);
    host.beat(4, 0).hear(arrow.subList(0, 3));
    host.hear(new Stamp(Integer.MAX_VALUE, last.gate(), last.kind(), last.ticks()), 5_040_000);
    host.until(7);
    assertThat(host.given())
        .allMatch(passage -> passage.lastEdge() - passage.firstEdge() <= Holes.MOST_IN_A_ROW);
  }

  @Test
  void edgesThatAllGetLostWhileBeatsCount() {
    Duration aDay = Duration.ofHours(24);
    for (int second = 0; second < aDay.toSeconds(); second++) {
      host.beat(second, second / 7 * 4);
    }
    assertThatCode(() -> host.until(aDay.toSeconds())).doesNotThrowAnyException();
    assertThat(host.shots()).hasSizeGreaterThan(12_000).allMatch(p -> p.lostEdges().size() == 4);
  }
}
