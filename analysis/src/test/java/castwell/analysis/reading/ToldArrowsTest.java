package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.reading.Trial.Judged;
import castwell.analysis.shot.Gate;
import castwell.analysis.speed.MixedSpeed;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Phrase;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Arrows that the edges tell, one disturbance each. */
class ToldArrowsTest {
  /** As two independent pairs of triggers of 1 mm give it, with a little for doubt. */
  private static final double CLEAN_U = 0.0018;

  @ParameterizedTest
  @ValueSource(doubles = {0.015, 0.02, 0.03, 0.045, 0.06})
  void insectInEitherGateBeforeAnArrow(double beforeS) {
    for (Gate gate : Gate.values()) {
      double ends = Range.front(gate) - beforeS;
      clean(Range.withArrow().blocked(gate, ends - 0.003, ends));
    }
  }

  @ParameterizedTest
  @EnumSource(Gate.class)
  void insectThreeMillisecondsBeforeTheFront(Gate gate) {
    double front = Range.front(gate);
    clean(Range.withArrow().blocked(gate, front - 0.006, front - 0.003));
  }

  @ParameterizedTest
  @EnumSource(Gate.class)
  void insectThreeMillisecondsAfterTheTail(Gate gate) {
    double tail = Range.tail(gate);
    clean(Range.withArrow().blocked(gate, tail + 0.003, tail + 0.006));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.02, 0.036, 0.045, 0.3})
  void twoArrowsOneAfterTheOther(double apartS) {
    List<Judged> counting = Range.withArrow().another(apartS).counting();

    assertThat(counting).hasSize(2);
    assertThat(counting).allSatisfy(ToldArrowsTest::isClean);
    assertThat(counting).allSatisfy(judged -> assertThat(judged.passage().edges()).hasSize(4));
  }

  @ParameterizedTest
  @EnumSource(Gate.class)
  void lightThroughLongFletching(Gate gate) {
    double tail = Range.tail(gate);
    clean(Range.withArrow().light(gate, tail - 0.005, tail - 0.0048));
  }

  @ParameterizedTest
  @EnumSource(Gate.class)
  void eighteenEdgesOfFlutter(Gate gate) {
    Range range = Range.withArrow();
    for (int i = 0; i < 9; i++) {
      double from = Range.tail(gate) - 0.0029 + i * 0.0003;
      range.light(gate, from, from + 0.0001);
    }
    Quantity speed = speed(only(range));

    assertThat(speed.value())
        .isCloseTo(Range.MPS, within(2.5 * speed.standardUncertainty(Kind.OWN)));
  }

  @ParameterizedTest
  @EnumSource(Gate.class)
  void bounceAfterTheTail(Gate gate) {
    double tail = Range.tail(gate);
    clean(Range.withArrow().blocked(gate, tail + 0.0008, tail + 0.0012));
  }

  /** The tail at one gate is seen 20 mm early, so only the fronts are right. */
  @ParameterizedTest
  @ValueSource(ints = {2, 3})
  void nockThatLetsLightThroughAtOneGate(int tail) {
    double[] off = new double[4];
    off[tail] = -0.02;
    MixedSpeed mixed = mixed(Range.withArrow(off));

    assertThat(mixed.front()).isGreaterThan(mixed.tail()).isGreaterThan(mixed.both());
    assertThat(mixed.mps()).isCloseTo(Range.MPS, within(2.5 * mixed.ownU()));
    assertThat(mixed.ownU() / mixed.mps()).isGreaterThan(CLEAN_U);
  }

  @Test
  void nockAtOneGateOfAnArrowWhoseLengthIsKnown() {
    MixedSpeed unknown = mixed(Range.withArrow(0, 0, 0, -0.02));
    MixedSpeed known = mixed(Range.withArrow(0, 0, 0, -0.02).tagged(Range.LENGTH_M));

    assertThat(known.front()).isGreaterThan(unknown.front());
    assertThat(Math.abs(known.mps() - Range.MPS)).isLessThan(Math.abs(unknown.mps() - Range.MPS));
  }

  @Test
  void fallsBackIntoGateB() {
    double tail = Range.tail(Gate.B);
    clean(Range.withArrow().blocked(Gate.B, tail + 0.007, tail + 0.1));
  }

  /** 0.12 ms, which is 6 mm, moves the mean of front and tail by 0.49 %. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void oneEdgeEarly(int edge) {
    double[] off = new double[4];
    off[edge] = -0.006;
    Quantity speed = speed(only(Range.withArrow(off)));

    assertThat(speed.value())
        .isCloseTo(Range.MPS, within(2.5 * speed.standardUncertainty(Kind.OWN)));
  }

  @Test
  void gateBlockedForSecondsAndFreeAgain() {
    clean(Range.withArrow().blocked(Gate.B, -9, -0.02));
  }

  @Test
  void ballJustBehindAnArrow() {
    clean(Range.withArrow().object(0.024, 40, 0.07));
  }

  @Test
  void saysWhatElseItsGatesSaw() {
    Judged judged = only(Range.withArrow().blocked(Gate.A, -0.009, -0.006));

    assertThat(judged.assessment().notes().stream().map(Phrase::written))
        .containsExactly("verdict.beside_before|A|0.0030000 s|0.0090000 s");
    assertThat(only(Range.withArrow()).assessment().notes()).isEmpty();
  }

  private static void clean(Range range) {
    isClean(only(range));
  }

  private static void isClean(Judged judged) {
    Quantity speed = speed(judged);
    assertThat(speed.value()).isCloseTo(Range.MPS, within(0.05));
    assertThat(speed.standardUncertainty(Kind.OWN) / speed.value()).isLessThan(2 * CLEAN_U);
    assertThat(judged.assessment().measurement().length().orElseThrow().value())
        .isCloseTo(Range.LENGTH_M, within(0.001));
  }

  private static MixedSpeed mixed(Range range) {
    return only(range).assessment().reading().arrow().orElseThrow().speed();
  }

  private static Judged only(Range range) {
    List<Judged> counting = range.counting();
    assertThat(counting).hasSize(1);
    return counting.get(0);
  }

  private static Quantity speed(Judged judged) {
    return judged.assessment().measurement().speed().orElseThrow();
  }
}
