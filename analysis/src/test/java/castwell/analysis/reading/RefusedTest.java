package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.reading.Trial.Judged;
import castwell.analysis.shot.Gate;
import castwell.analysis.verdict.Reason;
import castwell.analysis.wording.Amount;
import castwell.analysis.wording.Phrase;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What doesn't count, and why. */
class RefusedTest {

  @ParameterizedTest
  @ValueSource(ints = {100, 120})
  void flicker(int hz) {
    Range range = Range.empty();
    for (int i = 0; i < 8; i++) {
      double from = (double) i / hz;
      range.blocked(Gate.A, from, from + 0.007).blocked(Gate.B, from + 0.0015, from + 0.0086);
    }
    List<Judged> read = range.read();

    assertThat(codes(read)).containsOnly("flickering-lamp");
    assertThat(read.get(0).assessment().verdict().reasons().get(0).told())
        .containsExactly(
            Phrase.of("verdict.flicker", Gate.A, (long) hz),
            Phrase.of("verdict.flicker", Gate.B, (long) hz));
    assertThat(read.get(0).assessment().reading().parts().values()).containsOnly(Part.LAMP);
  }

  /** At so many edges no story is sought, but a lamp is known all the same. */
  @Test
  void flickerForLong() {
    Range range = Range.empty();
    for (int i = 0; i < 50; i++) {
      range.blocked(Gate.A, i * 0.01, i * 0.01 + 0.007);
    }

    assertThat(range.refused()).containsOnly("flickering-lamp");
    assertThat(range.read().get(0).assessment().reading().work().tried()).isZero();
  }

  @Test
  void bothGatesAtOnce() {
    assertThat(Range.empty().blocked(Gate.A, 0, 0.0148).blocked(Gate.B, 0, 0.0148).refused())
        .containsExactly("wrong-order");
  }

  @ParameterizedTest
  @ValueSource(doubles = {15, 25, 40})
  void ball(double mps) {
    assertThat(Range.empty().object(0, mps, 0.07).refused())
        .hasSize(1)
        .allMatch(code -> code.matches("no-arrows-length|too-slow"));
  }

  @Test
  void secondObjectOfNoArrowsLength() {
    Range range = Range.withArrow().object(0.1, 40, 0.07);

    assertThat(range.counting()).hasSize(1);
    assertThat(range.refused()).containsExactly("no-arrows-length");
  }

  @Test
  void twoArrowsThatOverlapAreNoneOfTheTaggedLength() {
    assertThat(Range.withArrow().another(0.004).tagged(Range.LENGTH_M).refused())
        .containsExactly("not-the-tagged-length");
  }

  /** Two insects, each in its gate for as long as an arrow would be: nobody can tell. */
  @Test
  void twoInsectsMuchLikeAnArrow() {
    Range range = Range.empty().blocked(Gate.A, 0, 0.0202).blocked(Gate.B, 0.016, 0.0389);
    Reason reason = range.read().get(0).assessment().verdict().reasons().get(0);

    assertThat(reason.code()).isEqualTo("two-stories");
    assertThat(reason.told().get(0).key()).isEqualTo("verdict.two_stories_strays");
  }

  @ParameterizedTest
  @EnumSource(Gate.class)
  void frontHiddenByAnInsectThatSatThere(Gate gate) {
    double front = Range.front(gate);
    Range range = Range.withArrow().blocked(gate, front - 0.3, front + 0.002);

    assertThat(range.counting()).isEmpty();
    assertThat(range.refused()).containsExactly("one-gate", "missing-edge");
  }

  @Test
  void onlyTheTailsWereSeenAtBothGates() {
    Range range = Range.withArrow().blocked(Gate.A, -0.012, 0.002);
    List<Judged> read = range.read();

    assertThat(codes(read)).containsExactly("one-pair");
    assertThat(read.get(0).assessment().verdict().reasons().get(0).told())
        .containsExactly(Phrase.of("verdict.one_pair_tails", Amount.speed(Range.MPS)));
  }

  @Test
  void flood() {
    Range range = Range.empty();
    for (int i = 0; i < 30; i++) {
      range.blocked(Gate.A, i * i * 1e-4, i * i * 1e-4 + 5e-5);
    }
    List<Judged> read = range.read();

    assertThat(codes(read)).containsExactly("too-many-edges");
    assertThat(read.get(0).assessment().verdict().reasons().get(0).told().get(0).written())
        .isEqualTo("verdict.flood|A|60|0.0841500 s");
  }

  private static List<String> codes(List<Judged> read) {
    return read.stream()
        .flatMap(judged -> judged.assessment().verdict().reasons().stream().limit(1))
        .map(Reason::code)
        .toList();
  }
}
