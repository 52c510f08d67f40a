package castwell.analysis.gates;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.util.Random;
import java.util.function.Predicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How often sessions of twenty shots name what is the matter with the gates, and how often they
 * name something where nothing is. The table by {@code mvn -pl analysis test
 * -Dtest=HowOftenNamedTest -Dcastwell.repeats=20000}.
 */
@Tag("slow")
class HowOftenNamedTest {
  private static final int REPEATS = Integer.getInteger("castwell.repeats", 1_000);
  private static final int SHOTS = 20;

  private final Random random = new Random(Seed.of(HowOftenNamedTest.class));

  private double share(SimulatedGates gates, int shots, Predicate<GateFindings> named) {
    int hits = 0;
    for (int i = 0; i < REPEATS; i++) {
      hits += named.test(gates.session(shots, random).orElseThrow()) ? 1 : 0;
    }
    double share = (double) hits / REPEATS;
    System.out.printf("%s, %d shots: %.4f%n", gates, shots, share);
    return share;
  }

  @Test
  void aButtThatSlowsTailsByOnePercentIsNamed() {
    SimulatedGates near = new SimulatedGates(0.001, 0.01, 0, 0, false);
    assertThat(share(near, SHOTS, GateFindings::frontOverTailNamed)).isGreaterThan(0.9);
  }

  @Test
  void aGateThatSeesTwoMillimetresMoreIsNamed() {
    SimulatedGates more = new SimulatedGates(0.001, 0, 0.002, 0, false);
    assertThat(share(more, SHOTS, GateFindings::frontOverTailNamed)).isGreaterThan(0.9);
  }

  @Test
  void aSpacingWrongByFiveMillimetresIsNamedByArrowsOfKnownLength() {
    SimulatedGates longer = new SimulatedGates(0.001, 0, 0, 0.005, false);
    SimulatedGates shorter = new SimulatedGates(0.001, 0, 0, -0.005, false);
    assertThat(share(longer, SHOTS, GateFindings::spacingNamed)).isGreaterThan(0.9);
    assertThat(share(shorter, SHOTS, GateFindings::spacingNamed)).isGreaterThan(0.9);
    SimulatedGates uncertain = new SimulatedGates(0.001, 0, 0, 0.005, true);
    assertThat(share(uncertain, SHOTS, GateFindings::spacingNamed)).isGreaterThan(0.7);
  }

  @Test
  void ofAHundredCleanSessionsOneIsNamedAtMost() {
    for (double trigger : new double[] {0.0003, 0.001}) {
      for (int shots : new int[] {10, SHOTS, 40}) {
        SimulatedGates clean = new SimulatedGates(trigger, 0, 0, 0, false);
        assertThat(share(clean, shots, GateFindings::isNamed)).isLessThanOrEqualTo(0.01);
      }
    }
  }

  @Test
  void norAreMoreWhereLengthsAndWidthsAreAsUncertainAsIsStated() {
    SimulatedGates uncertain = new SimulatedGates(0.001, 0, 0, 0, true);
    assertThat(share(uncertain, SHOTS, GateFindings::isNamed)).isLessThanOrEqualTo(0.01);
  }
}
