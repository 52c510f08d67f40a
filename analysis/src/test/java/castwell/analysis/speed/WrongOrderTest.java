package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Passages;
import castwell.analysis.uncertainty.Quantity;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class WrongOrderTest {
  private final Flight arrow = Flight.ARROW;

  @Test
  void backwardsHasANegativeSpeedForEachPairAndNoneToReport() {
    Measurement measurement = arrow.measure(Passages.of("BB0 AB26667 BC32371 AC59038"));

    assertThat(measurement.front().orElseThrow().value()).isNegative();
    assertThat(measurement.tail().orElseThrow().value()).isNegative();
    assertThat(measurement.speed()).isEmpty();
    assertThat(measurement.length()).isEmpty();
  }

  @Test
  void bothGatesAtOnceHasNoSpeedRatherThanAnInfiniteOne() {
    Measurement measurement = arrow.measure(Passages.of("AB0 BB0 AC32371 BC32371"));

    assertThat(measurement).isEqualTo(empty());
  }

  @Test
  void aRightPairBesideAWrongOneIsReportedAlone() {
    Measurement measurement = arrow.measure(Passages.of("AB0 BB26667 BC32371 AC59038"));

    assertThat(measurement.speed()).isEqualTo(measurement.front());
  }

  private static Measurement empty() {
    var none = Optional.<Quantity>empty();
    return new Measurement(none, none, none, none);
  }
}
