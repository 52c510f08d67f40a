package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** More lines lost than one: the heartbeats tell which objects they were of. */
class LostPassageTest {
  private static final Set<Integer> ALL = Set.of(5, 6, 7, 8, 9, 10, 11, 12);

  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();
  private final List<Stamp> first = gates.arrow(2);
  private final List<Stamp> second = gates.arrow(5);
  private final List<Stamp> third = gates.arrow(9);
  private final List<Stamp> fourth = gates.arrow(13);

  private Host beats(int from, int to, int counted) {
    for (int second = from; second <= to; second++) {
      host.beat(second, counted);
    }
    return host;
  }

  @Test
  void aWholePassageIsOneOfItsOwn() {
    beats(0, 1, 0).hear(first);
    beats(3, 4, 4);
    beats(6, 8, 8).hear(third).until(11);
    assertThat(host.shots())
        .containsExactly(Truth.whole(first), Truth.without(second, ALL), Truth.whole(third));
  }

  @Test
  void aWholePassageIsOneOfItsOwnWithoutABeatToTellOfIt() {
    host.beat(0, 0).hear(first).hear(third).until(11);
    assertThat(host.shots())
        .containsExactly(Truth.whole(first), Truth.without(second, ALL), Truth.whole(third));
  }

  @Test
  void aWholePassageSentAgainLateIsWhole() {
    beats(0, 1, 0).hear(first);
    beats(3, 4, 4);
    beats(6, 8, 8).hear(third).until(11).hearAt(11.5, second).until(12);
    assertThat(host.shots())
        .containsExactly(Truth.whole(first), Truth.whole(second), Truth.whole(third));
  }

  @Test
  void twoWholePassagesAreTwo() {
    beats(0, 1, 0).hear(first);
    beats(3, 4, 4);
    beats(6, 8, 8);
    beats(10, 12, 12).hear(fourth).until(15);
    assertThat(host.shots())
        .containsExactly(
            Truth.whole(first),
            Truth.without(second, ALL),
            Truth.without(third, ALL),
            Truth.whole(fourth));
  }

  @Test
  void theLastLineOfOneAndTheFirstOfTheNextAreEachItsOwns() {
    beats(0, 1, 0).hear(first);
    beats(3, 4, 4).hear(second.subList(0, 3));
    beats(6, 8, 8).hear(third.subList(1, 4)).until(11);
    assertThat(host.shots())
        .containsExactly(
            Truth.whole(first), Truth.without(second, Set.of(8)), Truth.without(third, Set.of(9)));
  }

  @Test
  void theLastLineOfOneAndAllOfTheNextAreEachItsOwns() {
    beats(0, 1, 0).hear(first);
    beats(3, 4, 4).hear(second.subList(0, 3));
    beats(6, 8, 8);
    beats(10, 12, 12).hear(fourth).until(15);
    assertThat(host.shots())
        .containsExactly(
            Truth.whole(first),
            Truth.without(second, Set.of(8)),
            Truth.without(third, ALL),
            Truth.whole(fourth));
  }

  @Test
  void allOfOneAndTheFirstLineOfTheNextAreEachItsOwns() {
    beats(0, 1, 0).hear(first);
    beats(3, 4, 4);
    beats(6, 8, 8).hear(third.subList(1, 4)).until(11);
    assertThat(host.shots())
        .containsExactly(
            Truth.whole(first), Truth.without(second, ALL), Truth.without(third, Set.of(9)));
  }

  @Test
  void aLineLostAfterAnIncompletePassageIsNotItsOwnWhenABeatCameBetween() {
    PretendGates other = new PretendGates();
    List<Stamp> half = other.arrowUnseenAt(5, 3);
    List<Stamp> next = other.arrow(9);
    beats(3, 4, 0).hear(half);
    beats(6, 8, 3).hear(next.subList(1, 4)).until(11);
    assertThat(host.shots()).containsExactly(Truth.whole(half), Truth.without(next, Set.of(4)));
  }

  @Test
  void aBeatInTheMiddleOfAPassageDoesNotTearItApart() {
    beats(0, 1, 0).hear(first);
    beats(3, 4, 4);
    host.beat(second.get(1).ticks() / PretendGates.HZ + 0.001, 6).hear(second.subList(2, 4));
    beats(6, 8, 8).until(9);
    assertThat(host.shots())
        .containsExactly(Truth.whole(first), Truth.without(second, Set.of(5, 6)));
  }

  @Test
  void aBeatInTheMiddleOfALostPassageDoesNotTearItApart() {
    beats(0, 1, 0).hear(first);
    beats(3, 4, 4);
    host.beat(second.get(1).ticks() / PretendGates.HZ + 0.001, 6);
    beats(6, 8, 8).until(9);
    assertThat(host.shots()).containsExactly(Truth.whole(first), Truth.without(second, ALL));
  }
}
