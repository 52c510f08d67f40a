package castwell.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.web.access.Attempts.Outcome;
import castwell.web.access.Attempts.Right;
import castwell.web.access.Attempts.Wait;
import castwell.web.access.Attempts.Wrong;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** Guessing is slow, from one address and from many. */
class AttemptsTest {
  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - 10); // it wraps soon
  private final Attempts attempts = new Attempts(nanos::get);

  private Outcome wrong(String address) {
    return attempts.attempt(address, () -> false);
  }

  private Outcome right(String address) {
    return attempts.attempt(address, () -> true);
  }

  private void pass(Duration time) {
    nanos.addAndGet(time.toNanos());
  }

  private int wrongOnesIn(Duration time, Duration each, String address) {
    int looked = 0;
    for (Duration passed = Duration.ZERO; passed.compareTo(time) < 0; passed = passed.plus(each)) {
      looked += wrong(address) instanceof Wrong ? 1 : 0;
      pass(each);
    }
    return looked;
  }

  @Test
  void fiveWrongOnesAndThenNotEvenTheRightOneIsLookedAt() {
    for (int i = 0; i < 5; i++) {
      assertThat(wrong("a")).isEqualTo(new Wrong());
    }
    assertThat(right("a")).isEqualTo(new Wait(Duration.ofSeconds(20)));
    assertThat(right("b")).isEqualTo(new Right());
    pass(Duration.ofSeconds(20));
    assertThat(right("a")).isEqualTo(new Right());
  }

  @Test
  void theRightOneCostsNothing() {
    for (int i = 0; i < 1000; i++) {
      assertThat(right("a")).isEqualTo(new Right());
    }
  }

  @Test
  void anHourOfGuessingFromOneAddressIsAHundredAndEightyFive() {
    // 5 + 3600 s / 20 s
    assertThat(wrongOnesIn(Duration.ofHours(1), Duration.ofMillis(250), "a")).isBetween(184, 185);
  }

  @Test
  void manyAddressesTogetherAreSlowedToOneASecond() {
    int looked = 0;
    for (int i = 0; i < 100_000; i++) {
      looked += wrong("address " + i) instanceof Wrong ? 1 : 0;
      pass(Duration.ofMillis(1));
    }
    assertThat(looked).isBetween(159, 160); // 60 + 100 s
  }
}
