package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Flight;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LengthTest {

  @Test
  void anInsectIsTooShortAndABranchTooLong() {
    assertThat(Bench.codes(new Flight(40, 0.0127).passage())).containsExactly("no-arrows-length");
    assertThat(Bench.codes(new Flight(40, 1.2).passage())).containsExactly("no-arrows-length");
    assertThat(Bench.told(new Flight(40, 0.0127).passage()))
        .isEqualTo("verdict.no_arrows_length|0.5000 m|1.0000 m|0.0127 m");
  }

  @Test
  void aTailBeforeItsFrontIsNoLength() {
    assertThat(Bench.codes("AC0 BC26667 AB32371 BB59038")).containsExactly("no-arrows-length");
    assertThat(Bench.told("AC0 BC26667 AB32371 BB59038")).startsWith("verdict.no_length|");
  }

  @Test
  void anotherArrowThanTheTaggedOne() {
    Passage passage = new Flight(45, 0.74).passage();

    assertThat(codes(passage, OptionalDouble.of(0.74))).isEmpty();
    assertThat(codes(passage, OptionalDouble.of(0.78))).isEmpty();
    assertThat(codes(passage, OptionalDouble.of(0.79))).containsExactly("not-the-tagged-length");
    assertThat(codes(passage, OptionalDouble.of(0.69))).containsExactly("not-the-tagged-length");
    assertThat(codes(passage, OptionalDouble.empty())).isEmpty();
  }

  private static List<String> codes(Passage passage, OptionalDouble taggedLengthM) {
    return Judge.judge(Bench.evidence(passage, Flight.RATE, taggedLengthM)).reasons().stream()
        .map(Reason::code)
        .toList();
  }
}
