package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The gates' silence that closes a passage can be set to other lengths. */
class QuietTimeTest {
  private final PretendGates gates = new PretendGates();

  private static Host host(int quietMillis) {
    return new Host(new AssemblyTiming(Duration.ofMillis(quietMillis), Duration.ofMillis(300)));
  }

  @ParameterizedTest
  @ValueSource(ints = {9, 10, 50, 100})
  void aPassageClosesAfterIt(int quietMillis) {
    List<Stamp> arrow = gates.arrow(5);
    Host host = host(quietMillis).beat(4, 0).hear(arrow);
    long lastArrival = arrow.get(3).micros() + Host.DELAY_MICROS;
    host.advance(lastArrival + quietMillis * 1000L - 1);
    assertThat(host.given()).isEmpty();
    host.advance(lastArrival + quietMillis * 1000L);
    assertThat(host.given()).containsExactly(Truth.whole(arrow));
  }

  /** An arrow of 0.5 m at 20 m/s is between gates 0.6096 m apart for 5.5 ms, and 3 are to spare. */
  @Test
  void anArrowBetweenTheGatesIsWaitedForHoweverShortItIs() {
    List<Stamp> arrow = gates.object(5, 20.5, 0.51);
    Host host = host(2).beat(4, 0).hear(arrow).until(6);
    assertThat(host.given()).containsExactly(Truth.whole(arrow));
  }

  @Test
  void twoArrowsAreTwoWhetherTheyAreReadTogetherOrNot() {
    List<Stamp> first = gates.arrow(5);
    double tail = first.get(3).ticks() / PretendGates.HZ;
    List<Stamp> second = gates.arrow(tail + 0.030);
    for (int quietMillis : new int[] {50, 10}) {
      Host host = host(quietMillis).beat(4, 0).hear(first).hear(second).until(6);
      assertThat(host.given()).containsExactly(Truth.whole(first), Truth.whole(second));
    }
  }

  @Test
  void whatLeavesAGateBlockedIsWaitedForLonger() {
    List<Stamp> gateB = gates.arrowUnseenAt(5, 0, 2, 3);
    Host host = host(100).beat(4, 0).hear(gateB).until(5.2);
    assertThat(host.given()).isEmpty();
    host.until(5.3);
    assertThat(host.given()).containsExactly(Truth.whole(gateB));
  }
}
