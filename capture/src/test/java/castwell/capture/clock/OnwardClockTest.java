package castwell.capture.clock;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.capture.English;
import castwell.capture.daemon.SteppedClock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A computer's clock that somebody sets, and the dates given meanwhile. */
class OnwardClockTest {
  private static final long SECOND = 1_000_000;
  private static final Instant NOON = Instant.parse("2026-05-02T12:00:00Z");

  private final SteppedClock computer = new SteppedClock(NOON);
  private final List<String> told = new ArrayList<>();
  private final OnwardClock clock =
      new OnwardClock(computer, computer::micros, sentence -> told.add(English.say(sentence)));

  private Instant after(long seconds) {
    computer.passTimeUntil(computer.micros() + seconds * SECOND);
    return clock.instant();
  }

  @Test
  void isTheComputersAsLongAsThatRuns() {
    assertThat(after(0)).isEqualTo(NOON);
    assertThat(after(90)).isEqualTo(NOON.plusSeconds(90));
    assertThat(clock.sentence()).isEmpty();
    assertThat(told).isEmpty();
  }

  @Test
  void goesOnWhenTheComputersIsSetBackAnHour() {
    after(90);
    computer.set(Duration.ofHours(-1));
    assertThat(after(10)).isEqualTo(NOON.plusSeconds(100));
    assertThat(after(600)).isEqualTo(NOON.plusSeconds(700));
    assertThat(told).hasSize(1).first().asString().contains("set back by 60 min");
    assertThat(clock.sentence().map(English::say)).contains(told.get(0));
  }

  @Test
  void isTheComputersAgainOnceThatIsSetRight() {
    after(90);
    computer.set(Duration.ofHours(-1));
    after(10);
    computer.set(Duration.ofHours(1));
    assertThat(after(10)).isEqualTo(NOON.plusSeconds(110));
    assertThat(clock.sentence()).isEmpty();
    assertThat(told).hasSize(2).last().asString().contains("is right again");
  }

  @Test
  void followsForwardAtOnce() {
    computer.set(Duration.ofHours(30));
    assertThat(after(5)).isEqualTo(NOON.plus(30, ChronoUnit.HOURS).plusSeconds(5));
    assertThat(told).isEmpty();
  }

  @Test
  void followsBackFromADateThatIsMoreThanADayOff() {
    computer.set(Duration.ofDays(400));
    after(5);
    computer.set(Duration.ofDays(-400));
    assertThat(after(5)).isEqualTo(NOON.plusSeconds(10));
    assertThat(told).hasSize(1).first().asString().contains("more than a day behind", "2027-06-06");
  }

  @Test
  void goesOnFromWhatAnEarlierRunDated() {
    clock.goOnFrom(NOON.plusSeconds(1200));
    assertThat(after(7)).isEqualTo(NOON.plusSeconds(1207));
    assertThat(told).hasSize(1).first().asString().contains("set back by 20 min");
    computer.passTimeUntil(3600 * SECOND); // nobody asked meanwhile: it has caught up
    assertThat(clock.instant()).isEqualTo(NOON.plusSeconds(3600));
    assertThat(clock.sentence()).isEmpty();
  }

  @Test
  void doesNotGoOnFromADateThatIsFarOff() {
    clock.goOnFrom(NOON.plus(Duration.ofDays(3)));
    assertThat(after(1)).isEqualTo(NOON.plusSeconds(1));
    assertThat(clock.sentence()).isPresent();
  }

  @Test
  void anEarlierDateOfAnEarlierRunIsNothing() {
    clock.goOnFrom(NOON.minusSeconds(100));
    assertThat(after(1)).isEqualTo(NOON.plusSeconds(1));
    assertThat(told).isEmpty();
  }

  @Test
  void whateverIsDoneToTheComputersClockWithinADayThisOneNeverGoesBack() {
    long seed = Seed.of(OnwardClockTest.class);
    Random random = new Random(seed);
    Instant before = clock.instant();
    long offset = 0;
    for (int i = 0; i < 10_000; i++) {
      if (random.nextInt(10) == 0) {
        long wanted = random.nextLong(-40_000, 40_000);
        computer.set(Duration.ofSeconds(wanted - offset));
        offset = wanted;
      }
      Instant now = after(random.nextLong(0, 5));
      assertThat(now).isAfterOrEqualTo(before);
      before = now;
    }
  }
}
