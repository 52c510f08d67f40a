package castwell.capture.clock;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

/** The wall clock against the monotonic one. */
class ClockStepsTest {
  private Instant wall = Instant.parse("2026-05-02T12:00:00Z");
  private long micros = 5_000_000;
  private final ClockSteps steps = new ClockSteps(new Wall(), () -> micros);

  private void pass(Duration byWall, Duration byMonotonic) {
    wall = wall.plus(byWall);
    micros += byMonotonic.toNanos() / 1_000;
    steps.look();
  }

  @Test
  void timeThatPassesIsNoStep() {
    for (int i = 0; i < 1000; i++) {
      pass(Duration.ofMillis(250), Duration.ofMillis(250));
    }
    pass(Duration.ofHours(9), Duration.ofHours(9));
    pass(Duration.ofMillis(600), Duration.ofMillis(250)); // slewed, or read late
    assertThat(steps.last()).isEmpty();
  }

  @Test
  void aClockSetBackAnHourIsAStep() {
    pass(Duration.ofHours(-1).plusMillis(250), Duration.ofMillis(250));
    assertThat(steps.last()).hasValue(new ClockStep(wall, Duration.ofHours(-1)));
    pass(Duration.ofMillis(250), Duration.ofMillis(250));
    assertThat(steps.last().orElseThrow().by()).isEqualTo(Duration.ofHours(-1));
    pass(Duration.ofMinutes(30).plusMillis(250), Duration.ofMillis(250)); // it slept
    assertThat(steps.last()).hasValue(new ClockStep(wall, Duration.ofMinutes(30)));
  }

  private final class Wall extends Clock {
    @Override
    public Instant instant() {
      return wall;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }
}
