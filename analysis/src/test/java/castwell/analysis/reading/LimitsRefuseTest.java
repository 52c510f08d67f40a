package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class LimitsRefuseTest {

  @Test
  void anEmptyRange() {
    assertThatThrownBy(() -> new Limits(130, 20, 0.5, 1, 0.04, 0.2, 16, 4))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "an arrow's speed goes from at least 0 up to more than that, not from 130.0 to 20.0"
                + " m/s");
    assertThatThrownBy(() -> new Limits(20, 130, Double.NaN, 1, 0.04, 0.2, 16, 4))
        .hasMessageContaining("an arrow's length");
  }

  @Test
  void anAllowanceBelowZero() {
    assertThatThrownBy(() -> new Limits(20, 130, 0.5, 1, 0.04, 0.2, -1, 4))
        .hasMessage("the number of flutter edges is at least 0, not -1.0");
  }
}
