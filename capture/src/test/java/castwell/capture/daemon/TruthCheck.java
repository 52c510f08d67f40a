package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.unit.Units;
import castwell.capture.store.Shot;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Compares what was made of a recording with what really went through the gates. */
final class TruthCheck {
  private TruthCheck() {}

  /**
   * Each passage is there once; each shot counts at its speed and length; nothing else counts, and
   * says why.
   *
   * @param tolerance relative, of speed and length
   */
  static void check(List<Shot> shots, List<Truth> truths, double tolerance) {
    assertThat(shots)
        .extracting(
            shot ->
                shot.byGates().orElseThrow().boot()
                    + ","
                    + shot.byGates().orElseThrow().firstEdge())
        .containsExactlyInAnyOrderElementsOf(
            truths.stream().map(truth -> truth.boot() + "," + truth.firstEdge()).toList());
    Map<List<Integer>, Shot> byEdge =
        shots.stream()
            .collect(
                Collectors.toMap(
                    shot ->
                        List.of(
                            shot.byGates().orElseThrow().boot(),
                            shot.byGates().orElseThrow().firstEdge()),
                    Function.identity()));
    for (Truth truth : truths) {
      check(byEdge.get(List.of(truth.boot(), truth.firstEdge())), truth, tolerance);
    }
  }

  /**
   * How many uncertainties a shot may be off: where fletching fluttered, other edges may be the
   * tail too, and have a say.
   */
  private static double doubt(Shot shot) {
    var gates = shot.byGates().orElseThrow();
    return gates.lastEdge() - gates.firstEdge() == 3 ? 0 : 2.5;
  }

  private static double uOf(OptionalDouble u) {
    return u.orElseThrow();
  }

  private static void check(Shot shot, Truth truth, double tolerance) {
    String what = truth + " was read as " + shot.figure();
    assertThat(shot.counts()).as(what).isEqualTo(truth.counts());
    if (truth.counts()) {
      double mps = truth.speedFps() * Units.METRES_PER_FOOT;
      assertThat(shot.reasons()).as(what).isEmpty();
      assertThat(shot.figure().speedMps().orElseThrow())
          .as(what)
          .isCloseTo(
              mps, within(mps * tolerance + doubt(shot) * uOf(shot.figure().speedUOwnMps())));
      double lengthM = truth.lengthMm() * 1e-3;
      // The truth's hundredths of a millimetre, and a tick at each end.
      double rounding = 0.01e-3 + 2 * mps / 2e6;
      assertThat(shot.figure().lengthM().orElseThrow())
          .as(what)
          .isCloseTo(
              lengthM,
              within(lengthM * tolerance + rounding + doubt(shot) * uOf(shot.figure().lengthUM())));
    } else {
      assertThat(shot.reasons()).as(what).isNotEmpty();
    }
  }
}
