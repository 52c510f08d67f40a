package castwell.capture.health;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.wording.Phrase;
import castwell.capture.English;
import castwell.capture.clock.ClockStep;
import castwell.capture.store.Store.Room;
import castwell.capture.view.health.Level;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What all stations of a computer share. */
class ComputerHealthTest {
  private static final Instant NOW = Station.NOON;

  @ParameterizedTest
  @CsvSource({
    "84e9, 1e8, 1, WELL, backup beside it",
    "1e8, 1e6, 1, ATTENTION, days",
    "8e9, 9e9, 1, ATTENTION, wouldn't fit",
    "4e7, 1e6, 1, BAD, GB are free",
    "1e8, 1e6, 40, BAD, 0 days"
  })
  void aDiskIsJudgedByHowLongItLasts(
      double free, double database, int stations, Level level, String told) {
    Optional<Room> room = Optional.of(new Room((long) free, (long) database));
    Item item = DiskItem.of(room, stations);
    assertThat(item.level()).as("%s", item).isEqualTo(level);
    if (level == Level.WELL) {
      assertThat(English.say(item.sentence())).doesNotContain(told);
    } else {
      assertThat(English.say(item.sentence())).contains(told);
    }
    assertThat(DiskItem.of(Optional.empty(), 1).level()).isEqualTo(Level.CANT_TELL);
  }

  @Test
  void whatIsAmissWithTheClockNowComesFirst() {
    Optional<Phrase> trouble = Optional.of(Phrase.of("clock.minutes_back", 60));
    ClockStep old = new ClockStep(NOW.minusSeconds(60), Duration.ofHours(2));
    Item item = HostClockItem.of(trouble, Optional.of(old), NOW);
    assertThat(item.level()).isEqualTo(Level.ATTENTION);
    assertThat(English.say(item.sentence()))
        .startsWith("The computer's clock was set back by 60 min: ");
  }

  @Test
  void aClockThatJumpedIsToldForADay() {
    ClockStep back = new ClockStep(NOW.minus(Duration.ofHours(3)), Duration.ofHours(-1));
    Item item = HostClockItem.of(Optional.empty(), Optional.of(back), NOW);
    assertThat(item.level()).isEqualTo(Level.ATTENTION);
    assertThat(English.say(item.sentence())).contains("3600.0 s back", "3 h ago");
    assertThat(
            HostClockItem.of(Optional.empty(), Optional.of(back), NOW.plus(Duration.ofDays(1)))
                .level())
        .isEqualTo(Level.WELL);
    assertThat(HostClockItem.of(Optional.empty(), Optional.empty(), NOW).level())
        .isEqualTo(Level.WELL);
  }
}
