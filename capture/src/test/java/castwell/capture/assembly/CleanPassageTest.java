package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class CleanPassageTest {
  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();

  @Test
  void isGivenOutOnceWhenTheGatesWereQuietFor10Ms() {
    List<Stamp> arrow = gates.arrow(5);
    host.beat(4, 0).hear(arrow);
    long lastArrival = arrow.get(3).micros() + Host.DELAY_MICROS;
    host.advance(lastArrival + 9_999);
    assertThat(host.given()).isEmpty();
    host.advance(lastArrival + 10_000);
    assertThat(host.given()).containsExactly(Truth.whole(arrow));
    host.beat(6, 4).beat(7, 4).until(60).close(false);
    assertThat(host.given()).hasSize(1);
    assertThat(host.assembler.nextLook()).isEmpty();
    assertThat(host.wanted()).isEmpty();
  }

  @Test
  void twoArrows300MsApartAreTwo() {
    List<Stamp> first = gates.arrow(5);
    List<Stamp> second = gates.arrow(5.3);
    host.beat(4, 0).hear(first).hear(second).until(6);
    assertThat(host.given()).containsExactly(Truth.whole(first), Truth.whole(second));
  }

  @Test
  void isHeardWhenTheHostJoinedABoardThatHadCounted() {
    gates.arrow(1);
    List<Stamp> second = gates.arrow(9);
    host.beat(8, 4).hear(second).until(10);
    assertThat(host.given()).containsExactly(Truth.whole(second));
  }

  @Test
  void isHeardWhenNoBeatCameYet() {
    gates.arrow(1);
    List<Stamp> second = gates.arrow(9);
    host.hear(second).until(10);
    assertThat(host.given()).containsExactly(Truth.whole(second));
  }

  @Test
  void isHeardWhenTheBoardSendsWhatItKeepsOfTheTimeBeforeTheHostJoined() {
    List<Stamp> first = gates.arrow(1);
    List<Stamp> second = gates.arrow(9);
    host.beat(20, 8).hearAt(20.1, first).hearAt(20.2, second).until(21);
    assertThat(host.given()).containsExactly(Truth.whole(first), Truth.whole(second));
  }

  @Test
  void stillOpenIsGivenOutWhenNothingMoreComes() {
    List<Stamp> arrow = gates.arrow(5);
    host.beat(4, 0).hear(arrow.subList(0, 3)).close(false);
    assertThat(host.given()).containsExactly(Truth.whole(arrow.subList(0, 3)));
  }
}
