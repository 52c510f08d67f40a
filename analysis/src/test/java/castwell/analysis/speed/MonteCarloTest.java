package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import org.hipparchus.stat.descriptive.StreamingStatistics;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The stated uncertainty against the scatter of simulated measurements of one known object: JCGM
 * 101:2008, propagation of distributions. 40000 trials know a standard deviation to 0.35 %.
 */
@Tag("slow")
class MonteCarloTest {
  private static final long SEED = Seed.of(MonteCarloTest.class);
  private static final int TRIALS = 40_000;
  private static final int LATE_TICKS = 300;
  private static final double TRUE_MPS = 50;
  private static final double TRUE_LENGTH_M = 0.75;
  private static final Calibration CALIBRATION =
      new Calibration(0.6, 0.8e-3, 1e-3, 2, Oscillator.RESONATOR);
  private static final TickRate RATE = TickRate.nominal(200_000, Oscillator.RESONATOR);

  private final Random random = new Random(SEED);

  @Test
  void ownPartOfTheSpeed() {
    check(Measurement::speed, TRUE_MPS, Kind.OWN);
  }

  @Test
  void commonPartOfTheSpeed() {
    check(Measurement::speed, TRUE_MPS, Kind.COMMON);
  }

  @Test
  void ownPartOfTheFrontPair() {
    check(Measurement::front, TRUE_MPS, Kind.OWN);
  }

  @Test
  void ownPartOfTheLength() {
    check(Measurement::length, TRUE_LENGTH_M, Kind.OWN);
  }

  @Test
  void commonPartOfTheLength() {
    check(Measurement::length, TRUE_LENGTH_M, Kind.COMMON);
  }

  private void check(Function<Measurement, Optional<Quantity>> which, double truth, Kind varied) {
    StreamingStatistics values = new StreamingStatistics();
    StreamingStatistics stated = new StreamingStatistics();
    for (int i = 0; i < TRIALS; i++) {
      Measurement m = SpeedMeter.measure(trial(varied), CALIBRATION, RATE, StampLatency.NONE);
      Quantity quantity = which.apply(m).orElseThrow();
      values.addValue(quantity.value());
      stated.addValue(quantity.standardUncertainty(varied));
    }
    double u = stated.getMean();

    assertThat(values.getStandardDeviation() / u).as("seed %d", SEED).isCloseTo(1, within(0.02));
    assertThat(values.getMean()).as("seed %d", SEED).isCloseTo(truth, within(0.05 * u));
  }

  /** One true passage through gates and clock whose own, or common, errors are drawn anew. */
  private Passage trial(Kind varied) {
    boolean own = varied == Kind.OWN;
    double spacingM =
        CALIBRATION.spacingM() + (own ? 0 : CALIBRATION.spacingUM() * random.nextGaussian());
    double hz =
        RATE.hz()
            * (own ? 1 : 1 + Oscillator.RESONATOR.halfWidth() * (2 * random.nextDouble() - 1));
    double phase = random.nextDouble();
    List<Edge> edges = new ArrayList<>();
    for (Gate gate : Gate.values()) {
      for (EdgeKind kind : List.of(EdgeKind.BLOCKED, EdgeKind.CLEAR)) {
        double placeM =
            (gate == Gate.A ? 0 : spacingM) + (kind == EdgeKind.BLOCKED ? 0 : TRUE_LENGTH_M);
        double scatterM = own ? CALIBRATION.triggerScatterM() * random.nextGaussian() : 0;
        double late = own ? LATE_TICKS * random.nextDouble() : LATE_TICKS / 2.0;
        double ticks = 1000 + phase + (placeM + scatterM) / TRUE_MPS * hz + late;
        edges.add(new Edge(1, gate, kind, (long) Math.floor(ticks), LATE_TICKS));
      }
    }
    return Passages.stamped(edges);
  }
}
