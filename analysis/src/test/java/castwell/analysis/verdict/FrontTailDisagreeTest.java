package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Flight;
import castwell.analysis.speed.Oscillator;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Phrase;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FrontTailDisagreeTest {
  private final Flight arrow = Flight.ARROW;

  /** The tail is late by 20 mm, so it says 3.2 % less than the front. */
  @Test
  void ofAnArrowIsInItsUncertainty() {
    Quantity close = Bench.assess(tailLateBy(0)).measurement().speed().orElseThrow();
    Assessment apart = Bench.assess(tailLateBy(0.02));
    Quantity speed = apart.measurement().speed().orElseThrow();
    Quantity front = apart.measurement().front().orElseThrow();
    Quantity tail = apart.measurement().tail().orElseThrow();

    assertThat(apart.verdict().counts()).isTrue();
    assertThat(speed.standardUncertainty(Kind.OWN))
        .isGreaterThan(5 * close.standardUncertainty(Kind.OWN))
        .isGreaterThan((speed.value() - tail.value()) / 2.5)
        .isGreaterThan((front.value() - speed.value()) / 2.5);
    assertThat(apart.notes().stream().map(Phrase::written))
        .containsExactly("verdict.front_fits_better|45.7194 m/s|44.2669 m/s");
  }

  /** What front and tail share cannot part them, however uncertain it is. */
  @Test
  void anUncertainSpacingExcusesNothing() {
    Calibration vague = new Calibration(Flight.SPACING_M, 0.1, 1e-3, 2, Oscillator.RESONATOR);
    Passage passage = tailLateBy(0.02);

    assertThat(own(passage, vague)).isEqualTo(own(passage, Flight.CALIBRATION));
  }

  /** Of a ball no uncertainty is told, so it is said. */
  @Test
  void ofAnotherObjectIsSaid() {
    assertThat(Bench.codes("AB0 AC4000 BB30000 BC36500"))
        .containsExactly("no-arrows-length", "front-tail-disagree");
  }

  private static double own(Passage passage, Calibration calibration) {
    return Bench.assess(passage, calibration, Flight.RATE, Optional.empty())
        .measurement()
        .speed()
        .orElseThrow()
        .standardUncertainty(Kind.OWN);
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
