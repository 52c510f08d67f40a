package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.setup.ObliquePath;
import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.setup.UnparallelPlanes;
import castwell.analysis.setup.WarmRails;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passages;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * The whole budget's uncertainty against arrows that fly through gates with every error drawn anew:
 * JCGM 101:2008, propagation of distributions. The flight is that of the physics, not of the
 * shares.
 */
class SetUpErrorsTest {
  private static final long SEED = Seed.of(SetUpErrorsTest.class);
  private static final int TRIALS = 20_000;
  private static final double TRUE_MPS = 50;
  private static final double LENGTH_M = 0.74;
  private static final double HZ = 2e6;

  private final Random random = new Random(SEED);

  @Test
  void theWholeBudgetIsWhatFlightsShow() {
    agrees(gates(0.0003, 0.001, SetUpErrors.USUAL));
  }

  @Test
  void gatesThatNobodyMeasured() {
    agrees(gates(Calibration.UNMEASURED_U_M, 0.001, SetUpErrors.USUAL));
  }

  @Test
  void eachErrorAlone() {
    SetUpErrors usual = SetUpErrors.USUAL;
    SetUpErrors none = SetUpErrors.NONE;
    for (SetUpErrors alone :
        List.of(
            new SetUpErrors(new ObliquePath(10), none.planes(), none.rails(), 0, 0),
            new SetUpErrors(none.path(), new UnparallelPlanes(0.02, 0.3), none.rails(), 0, 0),
            new SetUpErrors(none.path(), none.planes(), usual.rails(), 0, 0),
            new SetUpErrors(none.path(), none.planes(), none.rails(), 50e-6, 0),
            new SetUpErrors(none.path(), none.planes(), none.rails(), 0, 0.5))) {
      agrees(gates(0, 0, alone));
    }
  }

  /** cos 10 degrees is 0.9848: the speed reads 1.5 % low, which no edge tells. */
  @Test
  void twoStandardUncertaintiesHoldAlmostEveryObliquePath() {
    Calibration gates =
        gates(
            0,
            0,
            new SetUpErrors(
                new ObliquePath(10), SetUpErrors.NONE.planes(), SetUpErrors.NONE.rails(), 0, 0));
    int within = 0;
    for (int i = 0; i < TRIALS; i++) {
      Quantity speed = fly(gates);
      assertThat(speed.value()).isLessThan(TRUE_MPS * 1.0001);
      within += Math.abs(speed.value() - TRUE_MPS) < 2 * speed.standardUncertainty() ? 1 : 0;
    }
    // arccos(1 / (1 + 2 T^2 / sqrt 20)) / T, worked by hand.
    assertThat((double) within / TRIALS).as("seed %d", SEED).isCloseTo(0.9405, within(0.006));
  }

  @Test
  void theyAreCommonAndChangeNoSpeed() {
    Calibration gates = gates(0.0003, 0.001, SetUpErrors.USUAL);
    Quantity speed = Quantity.exact(50);

    Quantity after = gates.common(speed);

    assertThat(after.value()).isEqualTo(50);
    assertThat(after.standardUncertainty(Kind.OWN)).isZero();
    assertThat(gates.with(SetUpErrors.NONE).common(speed)).isEqualTo(speed);
  }

  @Test
  void boundsOutOfTheirRangeAreRefused() {
    assertThatThrownBy(() -> new ObliquePath(16))
        .hasMessageContaining("the path's angle in degrees");
    assertThatThrownBy(() -> new UnparallelPlanes(-1e-3, 0.1))
        .hasMessageContaining("the gates' being out of parallel");
    assertThatThrownBy(() -> new WarmRails(23e-6, Double.NaN))
        .hasMessageContaining("the rails' change of temperature");
  }

  private void agrees(Calibration gates) {
    double squares = 0;
    double stated = 0;
    for (int i = 0; i < TRIALS; i++) {
      Quantity speed = fly(gates);
      squares += Math.pow(speed.value() - TRUE_MPS, 2);
      stated += speed.standardUncertainty();
    }
    double u = stated / TRIALS;
    assertThat(Math.sqrt(squares / TRIALS) / u)
        .as("%s, seed %d", gates, SEED)
        .isCloseTo(1, within(0.05));
  }

  private static Calibration gates(double spacingUM, double triggerM, SetUpErrors errors) {
    return new Calibration(0.6096, spacingUM, triggerM, 2, Oscillator.CRYSTAL, true, errors);
  }

  private Quantity fly(Calibration gates) {
    TickRate rate = new TickRate(HZ, 2e-6);
    SetUpErrors errors = gates.errors();
    double oblique = Math.toRadians(random.nextDouble() * errors.path().greatestDegrees());
    double spacingM =
        gates.spacingM()
            + gates.spacingUM() * random.nextGaussian()
            + either(errors.planes().outOfParallelM())
                / UnparallelPlanes.HEIGHT_M
                * either(errors.planes().offMeasuredM());
    spacingM *= 1 + errors.rails().perKelvin() * either(errors.rails().spanK());
    double loss = random.nextDouble() * errors.dragPerMetre();
    double hz = HZ * (1 + rate.relativeU() * random.nextGaussian());
    double unlike = either(errors.latencyUnlikeS());
    double phase = random.nextDouble();
    List<Edge> edges = new ArrayList<>();
    for (Gate gate : Gate.values()) {
      for (EdgeKind kind : List.of(EdgeKind.BLOCKED, EdgeKind.CLEAR)) {
        double flown = gate == Gate.A ? 0 : spacingM / Math.cos(oblique);
        double scatter = gates.triggerScatterM() * random.nextGaussian();
        double seconds =
            afterSeconds(flown, spacingM, loss)
                + (scatter + (kind == EdgeKind.BLOCKED ? 0 : LENGTH_M)) / TRUE_MPS
                + (gate == Gate.A ? 0 : unlike);
        long ticks = (long) Math.floor(1e6 + phase + seconds * hz);
        edges.add(new Edge(1, gate, kind, ticks, 0));
      }
    }
    return SpeedMeter.measure(Passages.stamped(edges), gates, rate, StampLatency.NONE)
        .speed()
        .orElseThrow();
  }

  /** The time to a place, of an arrow that slows down as exp(-k x) from gate A on. */
  private static double afterSeconds(double flownM, double spacingM, double perMetre) {
    double first = TRUE_MPS * Math.exp(perMetre * spacingM / 2);
    return perMetre == 0 ? flownM / first : Math.expm1(perMetre * flownM) / (perMetre * first);
  }

  private double either(double bound) {
    return bound * (2 * random.nextDouble() - 1);
  }
}
