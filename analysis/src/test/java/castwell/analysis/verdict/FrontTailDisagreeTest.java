package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Flight;
import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.SpeedMeter;
import castwell.analysis.speed.StampLatency;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FrontTailDisagreeTest {
  private final Flight arrow = Flight.ARROW;

  /** Four triggers scatter by 1 mm each, so front and tail by 2 mm of travel; four times that. */
  @Test
  void isTheLimitWhereTheScatterPutsIt() {
    assertThat(Bench.codes(tailLateBy(0.0078))).isEmpty();
    assertThat(Bench.codes(tailLateBy(0.0083))).containsExactly("front-tail-disagree");
    assertThat(Bench.told(tailLateBy(0.02)))
        .isEqualTo("verdict.front_tail|45.7194 m/s|44.2669 m/s");
  }

  /** What front and tail share cannot part them, however uncertain it is. */
  @Test
  void anUncertainSpacingExcusesNothing() {
    Calibration vague = new Calibration(Flight.SPACING_M, 0.1, 1e-3, 2, Oscillator.RESONATOR);
    Passage passage = tailLateBy(0.0083);
    var measurement = SpeedMeter.measure(passage, vague, Flight.RATE, StampLatency.NONE);
    var evidence =
        new Evidence(passage, measurement, Flight.RATE, Limits.defaults(), OptionalDouble.empty());

    assertThat(Judge.judge(evidence).counts()).isFalse();
  }

  private Passage tailLateBy(double metres) {
    List<Edge> edges =
        arrow.passage().edges().stream()
            .map(
                e ->
                    e.gate() == Gate.B && e.kind() == EdgeKind.CLEAR
                        ? new Edge(
                            e.number(), e.gate(), e.kind(), e.ticks() + arrow.ticks(metres), 0)
                        : e)
            .toList();
    return Passage.of(edges);
  }
}
