package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Passage;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The board starts anew: what was open is closed, and nothing of two starts is joined. */
class BoardRestartTest {
  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();
  private final List<Stamp> arrow = gates.arrow(5);

  @Test
  void inTheMiddleOfAPassageIsItsReason() {
    List<Stamp> half = arrow.subList(0, 2);
    host.beat(4, 0).hear(half).close(true);
    assertThat(host.given())
        .containsExactly(new Passage(Truth.whole(half).edges(), List.of(), true));
  }

  @Test
  void justAfterACompletePassageDoesNotSpoilIt() {
    host.beat(4, 0).hear(arrow).close(true);
    assertThat(host.given()).containsExactly(Truth.whole(arrow));
  }

  @Test
  void longAfterAPassageGivesNothingOutAgain() {
    host.beat(4, 0).hear(arrow.subList(0, 2)).until(8).close(true);
    assertThat(host.given()).containsExactly(Truth.whole(arrow.subList(0, 2)));
  }

  @Test
  void whileALineIsWaitedForGivesItUp() {
    host.beat(4, 0).hear(arrow.subList(0, 1)).hear(arrow.subList(2, 4)).close(true);
    assertThat(host.given()).hasSize(1);
    assertThat(host.given().get(0).lostEdges()).containsExactly(2);
    assertThat(host.wanted()).isEmpty();
  }

  @Test
  void makesTheFirstEdgesOfTheNewStartMissedWhenTheyAreLost() {
    PretendGates anew = new PretendGates();
    List<Stamp> next = anew.arrow(1);
    Host newStart = new Host().sawItStart().hear(next.subList(1, 4));
    assertThat(newStart.wanted()).hasValue(1);
    newStart.hear(next.get(0), Host.micros(1.2)).until(3);
    assertThat(newStart.shots()).containsExactly(Truth.whole(next));
  }
}
