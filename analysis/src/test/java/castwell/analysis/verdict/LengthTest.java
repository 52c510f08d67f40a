package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.reading.Known;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Flight;
import java.util.List;
import java.util.Optional;
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

    assertThat(codes(passage, Optional.of(new Known(0.74, 0)))).isEmpty();
    assertThat(codes(passage, Optional.of(new Known(0.78, 0)))).isEmpty();
    assertThat(codes(passage, Optional.of(new Known(0.79, 0))))
        .containsExactly("not-the-tagged-length");
    assertThat(codes(passage, Optional.of(new Known(0.69, 0))))
        .containsExactly("not-the-tagged-length");
    assertThat(codes(passage, Optional.empty())).isEmpty();
  }

  private static List<String> codes(Passage passage, Optional<Known> taggedLengthM) {
    return Bench.codes(Bench.assess(passage, Flight.CALIBRATION, Flight.RATE, taggedLengthM));
  }
}
