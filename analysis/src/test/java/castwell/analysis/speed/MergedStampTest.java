package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import java.util.List;
import org.junit.jupiter.api.Test;

class MergedStampTest {
  private final Flight arrow = Flight.ARROW;

  @Test
  void isUsedAsNoEndSoTheSpeedComesFromTheOtherPair() {
    List<Edge> edges =
        arrow.passage().edges().stream()
            .map(
                e ->
                    e.gate() == Gate.B && e.kind() == EdgeKind.BLOCKED
                        ? new Edge(e.number(), Gate.B, EdgeKind.MERGED, e.ticks() - 400, 0)
                        : e)
            .toList();
    Measurement measurement = arrow.measure(Passage.of(edges));

    assertThat(measurement.front()).isEmpty();
    assertThat(measurement.speed().orElseThrow().value() / arrow.speedMps())
        .isCloseTo(1, within(4e-5));
    assertThat(measurement.length().orElseThrow().value()).isCloseTo(arrow.lengthM(), within(1e-4));
  }
}
