package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import castwell.analysis.shot.RecordedPassage;
import castwell.analysis.unit.Units;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Passages as a board sent them, the truth written down apart by whoever recorded them. */
class RecordedSpeedTest {

  static Stream<RecordedPassage> shots() {
    return RecordedPassage.all().stream().filter(recorded -> recorded.speedFps().isPresent());
  }

  @ParameterizedTest
  @MethodSource("shots")
  void speedWithinAHundredthOfAPercentAndLengthWithinAMillimetre(RecordedPassage recorded) {
    Measurement measurement =
        SpeedMeter.measure(
            recorded.passage(),
            Flight.CALIBRATION,
            new TickRate(recorded.hz(), 0),
            StampLatency.NONE);

    assertThat(measurement.speed().orElseThrow().value() / Units.METRES_PER_FOOT)
        .isCloseTo(recorded.speedFps().orElseThrow(), withinPercentage(0.01));
    assertThat(measurement.length().orElseThrow().value() * 1000)
        .isCloseTo(recorded.lengthMm().orElseThrow(), within(1.0));
  }
}
