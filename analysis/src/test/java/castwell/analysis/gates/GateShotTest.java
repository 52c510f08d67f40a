package castwell.analysis.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.Stamps;
import castwell.analysis.speed.TickRate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class GateShotTest {
  private static final TickRate MEGAHERTZ = new TickRate(1e6, 0);
  private static final Edge FRONT_A = new Edge(1, Gate.A, EdgeKind.BLOCKED, 1_000, 0);
  private static final Edge FRONT_B = new Edge(2, Gate.B, EdgeKind.BLOCKED, 13_000, 0);
  private static final Edge TAIL_A = new Edge(3, Gate.A, EdgeKind.CLEAR, 16_000, 0);
  private static final Edge TAIL_B = new Edge(4, Gate.B, EdgeKind.CLEAR, 28_120, 0);

  private static Optional<GateShot> shot(StampLatency latency, Edge... edges) {
    Stamps stamps = new Stamps(Passage.of(List.of(edges)), MEGAHERTZ, latency);
    return GateShot.of(0, 50, stamps, Optional.empty());
  }

  // By hand: A was blocked for 15 ms and B for 15.12 ms, at 50 m/s 750 and 756 mm; the fronts are
  // 12 ms apart and the tails 12.12 ms, at 50 m/s 6 mm more.
  @Test
  void lateTailsAreALongerArrowAtB() {
    GateShot shot = shot(StampLatency.NONE, FRONT_A, FRONT_B, TAIL_A, TAIL_B).orElseThrow();
    assertThat(shot.lengthM(Gate.A)).isCloseTo(0.75, within(1e-12));
    assertThat(shot.lengthM(Gate.B)).isCloseTo(0.756, within(1e-12));
    assertThat(shot.lengthM()).isCloseTo(0.753, within(1e-12));
    assertThat(shot.residualM()).isCloseTo(-0.006, within(1e-12));
  }

  @Test
  void aLatencyOfBothEndsChangesNothing() {
    GateShot shot =
        shot(new StampLatency(0, 0.00002), FRONT_A, FRONT_B, TAIL_A, TAIL_B).orElseThrow();
    assertThat(shot.residualM()).isCloseTo(-0.006, within(1e-12));
  }

  @Test
  void aMissingEdgeTellsNothingOfTheGates() {
    assertThat(shot(StampLatency.NONE, FRONT_A, FRONT_B, TAIL_A)).isEmpty();
  }
}
