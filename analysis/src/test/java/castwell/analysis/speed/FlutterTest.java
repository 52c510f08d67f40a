package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passages;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Fletching clears the beam and blocks it again before the tail has gone. */
class FlutterTest {
  private static final long SEED = Seed.of(FlutterTest.class);
  private final Flight arrow = Flight.ARROW;

  @Test
  void beforeTheTailItMovesNeitherSpeedNorLength() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 200; i++) {
      List<Edge> edges = new ArrayList<>(arrow.passage().edges());
      for (Gate gate : Gate.values()) {
        flutter(edges, gate, 1 + random.nextInt(8), random);
      }
      Measurement measurement = arrow.measure(Passages.stamped(edges));

      assertThat(measurement.speed().orElseThrow().value() / arrow.speedMps())
          .as("seed %d, round %d", SEED, i)
          .isCloseTo(1, within(2e-5));
      assertThat(measurement.length().orElseThrow().value())
          .as("seed %d, round %d", SEED, i)
          .isCloseTo(arrow.lengthM(), within(1e-4));
    }
  }

  private void flutter(List<Edge> edges, Gate gate, int times, SplittableRandom random) {
    double tailM = arrow.lengthM() + (gate == Gate.A ? 0 : Flight.SPACING_M);
    for (int i = 0; i < times; i++) {
      double clearM = tailM - 0.001 - 0.1 * random.nextDouble();
      edges.add(new Edge(1, gate, EdgeKind.CLEAR, arrow.ticks(clearM), 0));
      edges.add(new Edge(1, gate, EdgeKind.BLOCKED, arrow.ticks(clearM + 0.0005), 0));
    }
  }
}
