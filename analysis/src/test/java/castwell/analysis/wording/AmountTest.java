package castwell.analysis.wording;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class AmountTest {

  @Test
  void isReadAsItWasWritten() {
    Phrase phrase =
        Phrase.of("k", Amount.speed(45.25), Amount.length(0.74), Amount.duration(0.0030125), "1 s");

    assertThat(phrase.written()).isEqualTo("k|45.2500 m/s|0.7400 m|0.0030125 s|1 s");
    assertThat(Phrase.read(phrase.written())).isEqualTo(phrase);
  }
}
