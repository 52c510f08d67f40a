package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.uncertainty.Kind;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MissingEdgeTest {
  private final Flight arrow = Flight.ARROW;

  @ParameterizedTest
  @EnumSource(Gate.class)
  void withoutAFrontTheTailStillTellsTheSpeed(Gate gate) {
    Measurement measurement = arrow.measure(without(gate, EdgeKind.BLOCKED));

    assertThat(measurement.front()).isEmpty();
    assertThat(measurement.speed()).isEqualTo(measurement.tail());
    assertThat(measurement.speed().orElseThrow().value() / arrow.speedMps())
        .isCloseTo(1, within(4e-5));
  }

  @ParameterizedTest
  @EnumSource(Gate.class)
  void withoutATailTheOtherGateStillTellsTheLength(Gate gate) {
    Measurement measurement = arrow.measure(without(gate, EdgeKind.CLEAR));

    assertThat(measurement.tail()).isEmpty();
    assertThat(measurement.length().orElseThrow().value()).isCloseTo(arrow.lengthM(), within(1e-4));
  }

  /** Two independent pairs average out; one cannot: JCGM 100:2008, 4.2.3. */
  @ParameterizedTest
  @EnumSource(
      value = EdgeKind.class,
      names = {"BLOCKED", "CLEAR"})
  void onePairIsLessCertainByTheRootOfTwo(EdgeKind kind) {
    double one =
        arrow.measure(without(Gate.A, kind)).speed().orElseThrow().standardUncertainty(Kind.OWN);
    double both =
        arrow.measure(arrow.passage()).speed().orElseThrow().standardUncertainty(Kind.OWN);

    assertThat(one / both).isCloseTo(Math.sqrt(2), within(1e-4));
  }

  private Passage without(Gate gate, EdgeKind kind) {
    List<Edge> edges =
        arrow.passage().edges().stream()
            .filter(e -> !(e.gate() == gate && e.kind() == kind))
            .toList();
    return Passage.of(edges);
  }
}
