package castwell.analysis.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class SpacingFromLengthsTest {
  private static final Quantity STATED_M =
      Quantity.of(0.6096, 0.0003, Source.common("gate spacing"));
  private static final double TRIGGER_M = 0.001;

  private static List<GateShot> shots(KnownLength known, double apartM, double... seenM) {
    List<GateShot> shots = new ArrayList<>();
    for (double seen : seenM) {
      shots.add(ShotOf.length(seen, apartM, known));
    }
    return shots;
  }

  private static SpacingFromLengths of(List<GateShot> shots, Quantity widthM) {
    return SpacingFromLengths.of(shots, STATED_M, TRIGGER_M, widthM).orElseThrow();
  }

  private static List<GateShot> oneArrow(int n, double seenM) {
    return Collections.nCopies(n, ShotOf.length(seenM, 0, new KnownLength("1", 0.74, 0.001)));
  }

  // R 4: lm with weights and its summary's cov.unscaled, the belief of W as one more row; each
  // arrow's spread with a belief of 1 mm sqrt(1 + (L/S)^2) worth eight shots; gates 0.4 mm apart.
  @Test
  void threeArrowsAsRsWeightedLine() {
    List<GateShot> shots = new ArrayList<>();
    shots.addAll(shots(new KnownLength("1", 0.66, 0.001), 0.0004, 0.6548, 0.6557, 0.6539, 0.6551));
    shots.addAll(
        shots(new KnownLength("2", 0.74, 0.001), 0.0004, 0.7341, 0.7333, 0.7349, 0.7352, 0.7338));
    shots.addAll(shots(new KnownLength("3", 0.80, 0.0005), 0.0004, 0.7938, 0.7925, 0.7944));
    SpacingFromLengths told = of(shots, Quantity.of(0.0005, 0.0015, Source.common("width")));
    assertThat(told.shots()).isEqualTo(12);
    assertThat(told.arrows()).isEqualTo(3);
    assertThat(told.apartM()).isCloseTo(0.14, within(1e-12));
    assertThat(told.tellsWidth()).isTrue();
    assertThat(told.spacingM().value()).isCloseTo(0.614876842024224, within(1e-9));
    assertThat(told.spacingM().standardUncertainty()).isCloseTo(0.001344299663468, within(1e-9));
    assertThat(told.widthM().value()).isCloseTo(0.000518880444391, within(1e-9));
    assertThat(told.widthM().standardUncertainty()).isCloseTo(0.00149345340069, within(1e-9));
  }

  // By hand: S (L + W) / seen; u by u2/S2 = (s2/n + uL2 + uW2)/L2, where s2 = 8/(8 + 20 - 1) of the
  // believed (1 mm)2 (1 + (L/S)2), since all twenty are alike.
  @Test
  void oneArrowTellsTheSpacingByItsLengthAlone() {
    SpacingFromLengths told = of(oneArrow(20, 0.737), SpacingFromLengths.WIDTH_M);
    assertThat(told.spacingM().value()).isCloseTo(0.6096 * 0.74 / 0.737, within(1e-9));
    double s2 = 8 / 27.0 * 1e-6 * (1 + Math.pow(0.74 / 0.6096, 2));
    double seenU = Math.sqrt(s2 / 20 + 1e-6 + 2.25e-6);
    double u = 0.6096 * 0.74 / (0.737 * 0.737) * seenU;
    assertThat(told.spacingM().standardUncertainty()).isCloseTo(u, within(1e-8));
    assertThat(told.tellsWidth()).isFalse();
  }

  @Test
  void aSpacingStatedFiveMillimetresLongDisagreesAndOneOfOneDoesNot() {
    assertThat(of(oneArrow(20, 0.74 * 0.6096 / 0.6046), SpacingFromLengths.WIDTH_M).disagrees())
        .isTrue();
    assertThat(of(oneArrow(20, 0.74 * 0.6096 / 0.6086), SpacingFromLengths.WIDTH_M).disagrees())
        .isFalse();
  }

  @Test
  void aSpacingThatNobodyMeasuredIsDoubtedBeyondItsOwnUncertaintyOnly() {
    Quantity unmeasured = Quantity.of(0.6096, 0.003, Source.common("gate spacing"));
    List<GateShot> shots = oneArrow(20, 0.74 * 0.6096 / 0.6046);
    assertThat(
            SpacingFromLengths.of(shots, unmeasured, TRIGGER_M, SpacingFromLengths.WIDTH_M)
                .orElseThrow()
                .disagrees())
        .isFalse();
  }

  @Test
  void nineShotsOfKnownLengthTellNothing() {
    List<GateShot> shots = new ArrayList<>(oneArrow(9, 0.74));
    shots.add(ShotOf.residual(0, 0));
    assertThat(SpacingFromLengths.of(shots, STATED_M, TRIGGER_M, SpacingFromLengths.WIDTH_M))
        .isEmpty();
  }
}
