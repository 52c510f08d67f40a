package castwell.web.notes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.reading.Knowledge;
import castwell.analysis.reading.Known;
import castwell.analysis.reading.Limits;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Measurement;
import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.verdict.Assessment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Arrows with a long cone, flown through two of the notes' screens at every height and slope: do
 * their speeds scatter as the notes say, and is the ± that the program gives them right? By
 * reasoning.
 */
class FlightThroughGatesTest {
  private static final int ARROWS = 4000;
  private static final double SPACING_M = 0.6096;
  private static final double SPEED_MPS = 50;
  private static final double LENGTH_M = 0.74;
  private static final double SHAFT_MM = 11.0 / 32 * 25.4;
  private static final double CONE_MM = 20;
  private static final double COVERED_MM = 0.46 * Screen.DIODE_MM;
  private static final TickRate RATE = new TickRate(2e6, 0);
  private static final Calibration GATES =
      new Calibration(SPACING_M, 0, 0.0015, 2, Oscillator.CRYSTAL);

  private static final Knowledge KNOWLEDGE =
      Knowledge.of(GATES, Limits.defaults()).withTaggedLength(Optional.of(new Known(LENGTH_M, 0)));

  private final long seed = Seed.of(FlightThroughGatesTest.class);
  private final Random random = new Random(seed);

  @Test
  void speedsScatterAsTheNotesSay() {
    List<Double> fronts = new ArrayList<>();
    List<Double> both = new ArrayList<>();
    double excess = 0;
    for (int arrow = 0; arrow < ARROWS; arrow++) {
      Passage passage = fly();
      Assessment assessment = Assessment.of(passage, KNOWLEDGE, RATE, StampLatency.NONE);
      Measurement m = assessment.measurement();
      assertThat(assessment.verdict().reasons()).as("arrow %d of seed %d", arrow, seed).isEmpty();
      Quantity front = m.front().orElseThrow();
      fronts.add(front.value());
      both.add(m.speed().orElseThrow().value());
      excess += Math.pow((front.value() - SPEED_MPS) / front.standardUncertainty(), 2);
    }
    assertThat(Notes.prose("optics.md"))
        .contains("the front's speed scatters by 0.34 %, and that of front and tail by 0.17 %");
    // 4000 arrows tell a standard deviation to 1.1 %; five times that, and the rounding.
    assertThat(scatterPercent(fronts)).isCloseTo(0.34, within(0.025));
    assertThat(scatterPercent(both)).isCloseTo(0.17, within(0.015));
    assertThat(Math.sqrt(excess / ARROWS))
        .as("errors in standard uncertainties")
        .isBetween(0.85, 1.1);
  }

  /** At 50 m/s and up to 1 degree askew, anywhere in the middle 80 mm of gate A. */
  private Passage fly() {
    double atA = (random.nextDouble() - 0.5) * 80;
    double atB = atA + SPACING_M * 1e3 * Math.tan(Math.toRadians(2 * random.nextDouble() - 1));
    double begins = random.nextDouble();
    return Passage.of(
        List.of(
            edge(1, Gate.A, EdgeKind.BLOCKED, begins + seconds(tipBeyondM(atA))),
            edge(2, Gate.B, EdgeKind.BLOCKED, begins + seconds(SPACING_M + tipBeyondM(atB))),
            edge(3, Gate.A, EdgeKind.CLEAR, begins + seconds(LENGTH_M)),
            edge(4, Gate.B, EdgeKind.CLEAR, begins + seconds(SPACING_M + LENGTH_M))));
  }

  /** How far the tip has gone beyond a screen that it crosses there, when that triggers. */
  private static double tipBeyondM(double fromMiddleMm) {
    double shadowMm = Screen.shadowFor(COVERED_MM, fromMiddleMm * Screen.MAGNIFIED);
    return shadowMm / Screen.MAGNIFIED / SHAFT_MM * CONE_MM / 1e3;
  }

  private static double seconds(double metres) {
    return metres / SPEED_MPS;
  }

  private static Edge edge(int number, Gate gate, EdgeKind kind, double seconds) {
    return new Edge(number, gate, kind, (long) Math.floor(seconds * RATE.hz()), 0);
  }

  private static double scatterPercent(List<Double> speeds) {
    double sum = 0;
    for (double speed : speeds) {
      sum += (speed / SPEED_MPS - 1) * (speed / SPEED_MPS - 1);
    }
    return 100 * Math.sqrt(sum / speeds.size());
  }
}
