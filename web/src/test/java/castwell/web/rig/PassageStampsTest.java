package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A thousand arrows past the firmware in the rig, at random moments. The truth is the script's: the
 * cycle at which each pin changed.
 */
@Tag("rig")
@Timeout(300)
class PassageStampsTest {
  private static final int PASSAGES = Integer.getInteger("castwell.passages", 1000);
  private static final double MICROS_PER_TICK = 0.5;
  private static final double MICROS_PER_CYCLE = 0.0625;

  @TempDir Path folder;

  @Test
  void intervalsAreRightToAMicrosecondAndStampsNoLaterThanTheySay() {
    long seed = Seed.of(PassageStampsTest.class);
    Random random = new Random(seed);
    Script script = new Script();
    double at = 0.5;
    for (int i = 0; i < PASSAGES; i++) {
      at += 0.1 + 0.05 * random.nextDouble();
      double fps = 100 + 250 * random.nextDouble();
      script.arrow(at, fps, 0.65 + 0.2 * random.nextDouble());
    }
    RigRun run = RigRun.of(script.at(at + 1.5, "end"), folder);
    run.everyEdgeIsTold();
    run.linesAreWhole();
    run.noStampIsLaterThanItSays();
    assertThat(run.meanLateTicks()).as("but for the latency it tells of").isBetween(-0.2, 0.2);
    intervalsAreRight(run);
  }

  private static void intervalsAreRight(RigRun run) {
    List<RigRun.Told> a = RigRun.ofGate(run.told(), 'A');
    List<RigRun.Told> b = RigRun.ofGate(run.told(), 'B');
    List<RigRun.Injected> trueA = run.trueOfGate('A');
    List<RigRun.Injected> trueB = run.trueOfGate('B');
    double sum = 0;
    double worst = 0;
    int late = 0;
    for (int i = 0; i < a.size(); i++) {
      double told = (b.get(i).ticks() - a.get(i).ticks()) * MICROS_PER_TICK;
      double truth = (trueB.get(i).cycle() - trueA.get(i).cycle()) * MICROS_PER_CYCLE;
      double error = Math.abs(told - truth);
      double said = (a.get(i).late() + b.get(i).late()) * MICROS_PER_TICK;
      assertThat(error).as("%s, %s", a.get(i), b.get(i)).isLessThanOrEqualTo(1 + said);
      late += said > 0 ? 1 : 0;
      sum += error;
      worst = Math.max(worst, error);
    }
    System.out.printf(
        "%d intervals: mean error %.3f us, worst %.3f us, %d with a late stamp%n",
        a.size(), sum / a.size(), worst, late);
    assertThat(sum / a.size()).isLessThan(0.3);
    assertThat(late).isLessThan(a.size() / 50 + 3);
  }
}
