package castwell.capture.clock;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class BackoffTest {
  private static List<Long> seconds(Backoff backoff, int count) {
    return Stream.generate(backoff::next).limit(count).map(Duration::toSeconds).toList();
  }

  @Test
  void eachDelayIsLongerByTheFactorUpToTheLongest() {
    Backoff backoff = new Backoff(Duration.ofSeconds(2), 3, Duration.ofSeconds(20));
    assertThat(seconds(backoff, 5)).containsExactly(2L, 6L, 18L, 20L, 20L);
    backoff.reset();
    assertThat(seconds(backoff, 2)).containsExactly(2L, 6L);
  }
}
