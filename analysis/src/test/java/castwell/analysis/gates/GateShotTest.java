package castwell.analysis.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.shot.Gate;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class GateShotTest {
  private static final double SPACING_M = 0.6;
  private static final double MPS = 50;

  // By hand: the fronts were 12 ms apart and the tails 12.12 ms, at 50 m/s 600 mm and 606 mm.
  @Test
  void lateTailsLeaveAResidualBelowNothing() {
    assertThat(GateShot.residualM(SPACING_M, MPS, SPACING_M / 0.012, SPACING_M / 0.01212))
        .isCloseTo(-0.006, within(1e-12));
  }

  // By hand: A was blocked for 15 ms and B for 15.12 ms, at 50 m/s 750 mm and 756 mm; so the fronts
  // lie 0.12 ms closer together than the tails.
  @Test
  void lateTailsAreALongerArrowAtB() {
    GateShot shot = new GateShot(0, 0.753, -0.006, Optional.empty());
    assertThat(shot.lengthM(Gate.A)).isCloseTo(0.750, within(1e-12));
    assertThat(shot.lengthM(Gate.B)).isCloseTo(0.756, within(1e-12));
  }
}
