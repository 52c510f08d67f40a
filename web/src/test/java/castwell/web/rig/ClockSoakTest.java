package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The board's counter against the script's clock over hours, with an arrow a minute: {@code
 * -Dcastwell.hours=36} takes a quarter of an hour and wraps the 32 bits sixty times.
 */
@Timeout(value = 2, unit = TimeUnit.HOURS)
@Tag("rig")
class ClockSoakTest {
  private static final double HOURS =
      Double.parseDouble(System.getProperty("castwell.hours", "0.1"));
  private static final double BYTE_MICROS = 85; // 10 bits at 117647 baud
  private static final double COMPOSING_MICROS = 10_000; // longer where an arrow comes meanwhile

  @TempDir Path folder;

  @Test
  void overHoursTheCounterNeitherGainsNorLosesATick() {
    Script script = new Script();
    double seconds = HOURS * 3600;
    for (double at = 1; at < seconds - 1; at += 59.9) {
      script.arrow(at, 180, 0.72);
    }
    RigRun run = RigRun.of(script.at(seconds, "end"), folder);
    run.linesAreWhole();
    run.everyEdgeIsTold();
    run.noStampIsLaterThanItSays();
    run.heard('H').forEach(ClockSoakTest::isOfItsTime);
    System.out.printf(
        "%.1f h: %d beats, %d edges, ticks48 %d%n",
        HOURS, run.heard('H').count(), run.injected().size(), run.last('H').number(3));
    assertThat(run.last('H').number(6) + run.last('H').number(7)).isZero();
  }

  /** Its ticks are of when it was composed: before its own bytes, and those that waited. */
  private static void isOfItsTime(Heard beat) {
    int bytes = String.join(",", beat.fields()).length() + "$*0000\r\n".length();
    double composed = beat.micros() - (bytes + beat.number(4)) * BYTE_MICROS;
    assertThat(beat.number(3) / 2.0)
        .as(beat.toString())
        .isBetween(composed - COMPOSING_MICROS, composed + 100);
  }
}
