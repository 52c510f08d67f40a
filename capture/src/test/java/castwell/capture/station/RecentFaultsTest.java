package castwell.capture.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import castwell.capture.wire.Fault;
import castwell.capture.wire.Faults;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** Faults of the last hours, beside those since the start. */
class RecentFaultsTest {
  private static final long MINUTE = 60_000_000L;

  private final Faults faults = new Faults();
  private final RecentFaults recent = new RecentFaults(faults);

  @Test
  void faultsBeforeTheFirstLookAreRecent() {
    faults.count(Fault.GARBAGE, 3);
    assertThat(recent.counts().recent()).containsOnly(entry(Fault.GARBAGE, 3L));
    recent.advance(7 * MINUTE);
    recent.advance(9 * MINUTE);
    assertThat(recent.counts().recent()).containsOnly(entry(Fault.GARBAGE, 3L));
    assertThat(recent.counts().over()).isEqualTo(Duration.ofMinutes(2));
  }

  @Test
  void whatIsLongAgoIsInTheSumAlone() {
    faults.count(Fault.BAD_CRC, 50);
    for (int minute = 0; minute <= 24 * 60; minute++) {
      recent.advance(minute * MINUTE);
      if (minute % 60 == 30) {
        faults.count(Fault.LINE_GAP);
      }
    }
    FaultCounts counts = recent.counts();
    assertThat(counts.sinceStart())
        .containsOnly(entry(Fault.BAD_CRC, 50L), entry(Fault.LINE_GAP, 24L));
    assertThat(counts.over()).isBetween(Duration.ofMinutes(350), Duration.ofHours(6));
    assertThat(counts.recent()).containsOnly(entry(Fault.LINE_GAP, 6L));
  }
}
