package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Passage;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** An edge that the board stamped and whose line was lost, at each of the four places. */
class LostLineTest {
  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();
  private final List<Stamp> before = gates.arrow(2);
  private final List<Stamp> arrow = gates.arrow(5);

  private void hearAllBut(int place) {
    host.beat(1, 0).hear(before).beat(3, 4).beat(4, 4);
    for (int i = 0; i < arrow.size(); i++) {
      if (i != place) {
        host.hear(List.of(arrow.get(i)));
      }
    }
  }

  private Passage without(int place) {
    return Truth.without(arrow, Set.of(arrow.get(place).number()));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void sentAgainWithin300MsIsAsIfNothingWasLost(int place) {
    hearAllBut(place);
    assertThat(host.wanted()).hasValue(arrow.get(place).number());
    host.hear(arrow.get(place), Host.micros(5.25)).until(6);
    assertThat(host.given()).containsExactly(Truth.whole(before), Truth.whole(arrow));
  }

  @Test
  void lastLineSentAgainWithin300MsOfTheBeatThatTellsOfIt() {
    hearAllBut(3);
    host.beat(5.9, 8);
    assertThat(host.wanted()).hasValue(8);
    host.hear(arrow.get(3), Host.micros(6.15)).until(8);
    assertThat(host.shots()).containsExactly(Truth.whole(before), Truth.whole(arrow));
  }

  @ParameterizedTest
  @CsvSource({"0,true", "1,true", "2,true", "3,true", "0,false", "1,false", "2,false"})
  void sentAgainLaterAmends(int place, boolean beats) {
    hearAllBut(place);
    if (beats) {
      host.beat(6, 8).beat(7, 8).beat(8, 8);
    }
    host.until(9);
    assertThat(host.shots()).containsExactly(Truth.whole(before), without(place));
    assertThat(host.wanted()).isEmpty();
    host.hear(arrow.get(place), Host.micros(20)).until(21);
    assertThat(host.shots()).containsExactly(Truth.whole(before), Truth.whole(arrow));
  }

  @ParameterizedTest
  @CsvSource({"0,true", "1,true", "2,true", "3,true", "0,false", "1,false", "2,false", "3,false"})
  void neverSentAgainIsNamedAsLost(int place, boolean beats) {
    hearAllBut(place);
    if (beats) {
      host.beat(6, 8).beat(7, 8).beat(8, 8);
    }
    List<Stamp> after = gates.arrow(9);
    host.hear(after).until(12);
    assertThat(host.shots())
        .containsExactly(Truth.whole(before), without(place), Truth.whole(after));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7})
  void ofAFlutteringArrowIsNamedAsLost(int place) {
    host.beat(1, 0).hear(before).beat(3, 4);
    List<Stamp> fluttering = gates.flutteringArrow(9);
    host.hear(arrow).beat(6, 8).beat(7, 8);
    Set<Integer> lost = Set.of(fluttering.get(place).number());
    host.hear(fluttering.stream().filter(s -> !lost.contains(s.number())).toList());
    host.beat(10, 16).until(12);
    assertThat(host.shots())
        .containsExactly(Truth.whole(before), Truth.whole(arrow), Truth.without(fluttering, lost));
  }

  @Test
  void lastLineIsNotKnownToBeLostWhileNothingTellsOfIt() {
    hearAllBut(3);
    host.until(30);
    assertThat(host.shots()).containsExactly(Truth.whole(before), Truth.whole(arrow.subList(0, 3)));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void thePassageWaitsNoLongerThan300Ms(int place) {
    hearAllBut(place);
    long found = arrow.get(place + 1).micros() + Host.DELAY_MICROS;
    host.advance(found + 299_999);
    assertThat(host.given()).hasSize(1);
    host.advance(found + 300_000);
    assertThat(host.given()).containsExactly(Truth.whole(before), without(place));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void nothingIsWaitedForOnceTheBoardSaysThatItIsGone(int place) {
    hearAllBut(place);
    int lost = arrow.get(place).number();
    host.missing(5.1, lost, lost).until(5.25);
    assertThat(host.given()).containsExactly(Truth.whole(before), without(place));
    assertThat(host.wanted()).isEmpty();
  }

  @Test
  void anAnswerAboutEdgesThatWereHeardChangesNothing() {
    hearAllBut(1);
    host.missing(5.1, 1, 4);
    assertThat(host.wanted()).hasValue(6);
    host.missing(5.15, 1, Integer.MAX_VALUE).until(5.3);
    assertThat(host.shots()).containsExactly(Truth.whole(before), without(1));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void leavesAnArrow150MsBehindAlone(int place) {
    hearAllBut(place);
    List<Stamp> next = gates.arrow(5.15);
    host.hear(next).until(8);
    assertThat(host.shots())
        .containsExactly(Truth.whole(before), without(place), Truth.whole(next));
  }

  @Test
  void theNextArrowIsGivenOutWhileAHoleIsWaitedFor() {
    hearAllBut(1);
    List<Stamp> next = gates.arrow(5.1);
    host.hear(next).until(5.2);
    assertThat(host.given()).containsExactly(Truth.whole(before), Truth.whole(next));
    host.hear(arrow.get(1), Host.micros(5.22)).until(6);
    assertThat(host.shots())
        .containsExactly(Truth.whole(before), Truth.whole(arrow), Truth.whole(next));
  }
}
