package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class KnownTest {

  @Test
  void isFiniteWithAnUncertaintyOfAtLeastNought() {
    assertThatThrownBy(() -> new Known(Double.NaN, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Known(0.74, -0.001))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "what is known is a finite value with an uncertainty of at least 0, not 0.74 ± -0.001");
  }
}
