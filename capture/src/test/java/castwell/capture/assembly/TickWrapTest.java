package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The 32-bit counter wraps every 35.8 minutes at 2 MHz. */
class TickWrapTest {
  private static final double WRAP_SECONDS = (1L << 32) / PretendGates.HZ;

  private final PretendGates gates = new PretendGates();
  private final Host host = new Host();

  /** An arrow whose second edge comes after the counter wrapped. */
  private List<Stamp> acrossTheWrap(int wraps) {
    return gates.arrow(wraps * WRAP_SECONDS - 0.006);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 7})
  void insideAPassage(int wraps) {
    List<Stamp> arrow = acrossTheWrap(wraps);
    host.beat(wraps * WRAP_SECONDS - 1, 0).hear(arrow).until(wraps * WRAP_SECONDS + 1);
    assertThat(host.given()).containsExactly(Truth.whole(arrow));
  }

  @Test
  void insideAPassageBeforeAnyBeatCame() {
    List<Stamp> arrow = acrossTheWrap(1);
    host.hear(arrow).until(WRAP_SECONDS + 1);
    assertThat(host.given()).containsExactly(Truth.whole(arrow));
  }

  @Test
  void betweenTwoPassages() {
    List<Stamp> first = gates.arrow(WRAP_SECONDS - 0.2);
    List<Stamp> second = gates.arrow(WRAP_SECONDS + 0.1);
    host.beat(WRAP_SECONDS - 1, 0).hear(first).hear(second).until(WRAP_SECONDS + 2);
    assertThat(host.given()).containsExactly(Truth.whole(first), Truth.whole(second));
  }

  @Test
  void betweenTwoPassagesOfEqualLow32Bits() {
    List<Stamp> first = gates.arrow(5);
    List<Stamp> second = gates.arrow(5 + WRAP_SECONDS);
    host.beat(4, 0).hear(first).beat(6, 4).beat(4 + WRAP_SECONDS, 4).hear(second);
    host.until(8 + WRAP_SECONDS);
    assertThat(host.given()).containsExactly(Truth.whole(first), Truth.whole(second));
  }

  @Test
  void edgesSentAgain20MinutesLate() {
    List<Stamp> arrow = acrossTheWrap(1);
    double from = WRAP_SECONDS;
    host.beat(from - 2, 0).beat(from - 1, 0);
    host.beat(from + 1200, 4).hearAt(from + 1201, arrow).until(from + 1300);
    assertThat(host.shots()).containsExactly(Truth.whole(arrow));
  }

  @Test
  void edgesSentAgain20MinutesLateToAHostThatJustJoined() {
    List<Stamp> arrow = acrossTheWrap(1);
    double from = WRAP_SECONDS;
    host.beat(from + 1200, 4).hearAt(from + 1201, arrow).until(from + 1300);
    assertThat(host.shots()).containsExactly(Truth.whole(arrow));
  }

  @Test
  void edgesSentAgainSeveralWrapsLate() {
    List<Stamp> arrow = acrossTheWrap(1);
    double later = 5 * WRAP_SECONDS;
    host.beat(WRAP_SECONDS - 1, 0).beat(WRAP_SECONDS + 1, 4).beat(later, 4);
    host.hearAt(later + 1, arrow).until(later + 2);
    assertThat(host.shots()).containsExactly(Truth.whole(arrow));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void oneEdgeSentAgainSeveralWrapsLate(int place) {
    List<Stamp> arrow = acrossTheWrap(1);
    double later = 5 * WRAP_SECONDS;
    host.beat(WRAP_SECONDS - 1, 0);
    for (Stamp stamp : arrow) {
      if (stamp.number() != place + 1) {
        host.hear(List.of(stamp));
      }
    }
    host.beat(WRAP_SECONDS + 1, 4).beat(later, 4);
    host.hearAt(later + 1, List.of(arrow.get(place))).until(later + 2);
    assertThat(host.shots()).containsExactly(Truth.whole(arrow));
  }
}
