package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.capture.clock.HostClock;
import castwell.capture.clock.OnwardClock;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Feed;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody sets the computer's clock while it captures, or between two runs. */
@Tag("slow")
class SetClockTest {
  private static final long SECOND = 1_000_000;
  private static final Duration AN_HOUR_BACK = Duration.ofHours(-1);

  @TempDir Path folder;
  private final SteppedClock computer = new SteppedClock(HandFedStation.STARTED);
  private RangeBench bench;
  private HandFedStation lane;

  @BeforeEach
  void openRange() {
    open();
    bench
        .commands()
        .arrows()
        .add(
            "light",
            0.020,
            Measures.<ArrowMeasure>none()
                .with(ArrowMeasure.LENGTH, 0.72)
                .with(ArrowMeasure.DIAMETER, 0.008));
    bench
        .commands()
        .arrows()
        .add(
            "heavy",
            0.030,
            Measures.<ArrowMeasure>none()
                .with(ArrowMeasure.LENGTH, 0.72)
                .with(ArrowMeasure.DIAMETER, 0.008));
  }

  @AfterEach
  void closeRange() {
    bench.close();
  }

  private void open() {
    OnwardClock clock = new OnwardClock(computer, computer::micros, sentence -> {});
    bench = RangeBench.in(folder, clock);
    bench.store().read(t -> t.sessions().lastDated("lane")).ifPresent(clock::goOnFrom);
    lane =
        new HandFedStation(bench, "lane", Backlog.MOST, HostClock.live(clock, computer::micros)) {
          @Override
          void passTimeUntil(long micros) {
            computer.passTimeUntil(micros);
            super.passTimeUntil(micros);
          }
        };
    long now = computer.micros();
    lane.plugIn(now);
    lane.identity(now + 1000, 7);
    lane.beat(now + 2000, 7, bench.shots("lane").size() * 4);
  }

  private void shoot(long second, int firstEdge) {
    lane.arrow(second * SECOND, 7, firstEdge);
    lane.passTimeUntil((second + 1) * SECOND);
  }

  private void choose(String arrow) {
    bench.commands().tag("lane", Optional.empty(), Optional.of(arrow), "page");
  }

  private List<String> arrows() {
    return bench.shots("lane").stream().map(shot -> shot.arrow().orElseThrow().name()).toList();
  }

  @Test
  void aTagSaidJustBeforeItWentBackHoldsForTheShotsAfter() {
    choose("light");
    shoot(10, 1);
    choose("heavy");
    computer.set(AN_HOUR_BACK);
    shoot(20, 5);
    choose("light");
    shoot(30, 9);
    assertThat(arrows()).containsExactly("light", "heavy", "light");
  }

  @Test
  void theOrderOfShotsTheirEndAndTheirSessionStay() {
    choose("light");
    shoot(10, 1);
    computer.set(AN_HOUR_BACK);
    shoot(20, 5); // the same end
    computer.set(AN_HOUR_BACK);
    shoot(300, 9); // more than three minutes later
    List<Shot> shots = bench.shots("lane");
    assertThat(shots).extracting(Shot::shotId).isSortedAccordingTo(String::compareTo).hasSize(3);
    assertThat(shots).extracting(Shot::fired).isSorted();
    assertThat(shots).extracting(Shot::end).containsExactly(1, 1, 2);
    assertThat(shots).extracting(Shot::session).containsOnly("2026-05-02");
    String newest = bench.store().read(t -> t.shots().last("lane")).orElseThrow().shotId();
    assertThat(newest).isEqualTo("gate-1.7.9");
    List<Long> fed =
        bench.store().read(t -> t.feed().after(0, 100)).stream()
            .filter(item -> item.kind() == Feed.Kind.SHOT)
            .map(item -> item.passageId().orElseThrow())
            .toList();
    assertThat(fed).isSorted();
  }

  @Test
  void gatesMeasuredJustBeforeItWentBackHoldForTheShotsAfter() {
    shoot(10, 1);
    Calibration wider = new Calibration(0.70, 0.0003, 0.001, 2.0, Oscillator.RESONATOR);
    Instant now = HandFedStation.STARTED.plusSeconds(11);
    bench.commands().calibrate("lane", now, wider, "page");
    computer.set(AN_HOUR_BACK);
    shoot(20, 5);
    List<Shot> shots = bench.shots("lane");
    double ratio =
        shots.get(1).figure().speedMps().orElseThrow()
            / shots.get(0).figure().speedMps().orElseThrow();
    assertThat(ratio).isBetween(0.70 / 0.6096 - 1e-3, 0.70 / 0.6096 + 1e-3);
  }

  @Test
  void setForwardAnHourABeginsAnEndAndLosesNothing() {
    choose("light");
    shoot(10, 1);
    computer.set(Duration.ofHours(1));
    shoot(20, 5);
    computer.set(AN_HOUR_BACK); // that was a slip
    shoot(30, 9);
    assertThat(arrows()).containsExactly("light", "light", "light");
    assertThat(bench.shots("lane")).extracting(Shot::end).containsExactly(1, 2, 2);
  }

  @Test
  void betweenTwoRunsItIsNoOtherwise() {
    choose("light");
    shoot(10, 1);
    choose("heavy");
    bench.close();
    computer.set(AN_HOUR_BACK);
    open();
    shoot(20, 5);
    assertThat(arrows()).containsExactly("light", "heavy");
    assertThat(bench.shots("lane")).extracting(Shot::end).containsExactly(1, 1);
    assertThat(bench.shots("lane")).extracting(Shot::session).containsOnly("2026-05-02");
  }

  @Test
  void aYearTooFarAndBackLosesNothing() {
    choose("light");
    computer.set(Duration.ofDays(365));
    shoot(10, 1);
    computer.set(Duration.ofDays(-365));
    shoot(20, 5);
    assertThat(arrows()).containsOnly("light").hasSize(2);
    assertThat(bench.shots("lane"))
        .extracting(shot -> shot.fired().toString().substring(0, 10))
        .containsExactlyInAnyOrder("2026-05-02", "2027-05-02");
  }

  @Test
  void shotsThatWaitedInMemoryKeepTheirDateAndTags() {
    choose("light");
    computer.set(AN_HOUR_BACK);
    castwell.capture.FullDisk.during(() -> shoot(10, 1));
    assertThat(bench.shots("lane")).isEmpty();
    choose("heavy"); // the disk is free again, and what waits not yet written
    lane.passTimeUntil(15 * SECOND);
    shoot(20, 5);
    assertThat(arrows()).containsExactly("light", "heavy");
  }
}
