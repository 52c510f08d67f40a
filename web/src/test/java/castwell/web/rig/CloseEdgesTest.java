package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Edges too close for the board to take at leisure: none goes without a count. */
@Tag("rig")
@Timeout(300)
class CloseEdgesTest {
  private static final double MICRO = 1e-6;

  /** How often the 16-bit timer wraps, in seconds. */
  private static final double WRAP = 65_536 / 2e6;

  @TempDir Path folder;

  /** Every edge was told, or told of as dropped, or merged with the one before. */
  private static void nothingIsSilentlyLost(RigRun run) {
    Heard beat = run.last('H');
    long edges = beat.number(5);
    long merged = beat.number(6);
    long dropped = beat.number(7);
    assertThat(edges + merged + dropped).as(beat.toString()).isEqualTo(run.injected().size());
    assertThat(run.told()).hasSize((int) edges);
    assertThat(run.told().stream().filter(edge -> edge.kind() == 'G')).hasSize((int) merged);
    assertThat(run.heard('L').mapToLong(line -> line.number(6)).sum()).isEqualTo(dropped);
    whatWasToldHappened(run, 'A');
    whatWasToldHappened(run, 'B');
  }

  /** Each told edge is one of the script's, of its kind, and in its order. */
  private static void whatWasToldHappened(RigRun run, char gate) {
    Iterator<RigRun.Injected> truth = run.trueOfGate(gate).iterator();
    for (RigRun.Told told : RigRun.ofGate(run.told(), gate)) {
      boolean found = told.kind() == 'G';
      while (!found) {
        assertThat(truth.hasNext()).as("an edge as told by %s", told).isTrue();
        RigRun.Injected edge = truth.next();
        double late = run.lateTicks(edge, told);
        found = edge.kind() == told.kind() && late >= -1 && late <= told.late() + 1;
      }
    }
  }

  /** A gate blocked for so long, then the same at the other gate so much later. */
  private RigRun pairs(Random random, double width, double apart) {
    Script script = new Script();
    for (int i = 0; i < 120; i++) {
      double at = 1 + 0.03 * i + 0.01 * random.nextDouble();
      script.at(at, "A blocked").at(at + width, "A clear");
      script.at(at + apart, "B blocked").at(at + apart + width, "B clear");
    }
    return RigRun.of(script.at(6.5, "end"), folder);
  }

  @Test
  void twentyMicrosecondsApartEachHasItsOwnStamp() {
    Random random = new Random(Seed.of(CloseEdgesTest.class));
    for (double apart : new double[] {0, 3 * MICRO, 10 * MICRO, 17 * MICRO, 20 * MICRO}) {
      RigRun run = pairs(random, 20 * MICRO, apart);
      nothingIsSilentlyLost(run);
      run.everyEdgeIsTold();
      run.noStampIsLaterThanItSays();
    }
  }

  @Test
  void twoMicrosecondsApartNoneIsLostAndMergedOnesSaySo() {
    Random random = new Random(Seed.of(CloseEdgesTest.class));
    for (double apart : new double[] {0, MICRO, 2 * MICRO, 6 * MICRO, 1000 * MICRO}) {
      RigRun run = pairs(random, 2 * MICRO, apart);
      nothingIsSilentlyLost(run);
      System.out.printf(
          "pulses of 2 us, B %.0f us after A: %d of %d edges merged%n",
          apart / MICRO, run.last('H').number(6), run.injected().size());
    }
    RigRun alone = pairs(random, 2 * MICRO, 1000 * MICRO);
    alone.everyEdgeIsTold();
    alone.noStampIsLaterThanItSays();
  }

  /** Cycle by cycle around it, the second gate's stamp waiting for the first's. */
  @Test
  void acrossTheTimersWrapNoStampIsOffByOne() {
    double cycle = 1 / 16e6;
    long firstTick = RigRun.of(new Script().at(0.3, "end"), folder).measure("first-tick-cycle");
    Script script = new Script();
    for (int i = 0; i < 240; i++) {
      double at = firstTick * cycle + (40 + i) * WRAP + (i - 160) * cycle;
      script.at(at, "A blocked").at(at + 24 * cycle, "B blocked");
      script.at(at + WRAP / 2, "A clear").at(at + WRAP / 2 + 24 * cycle, "B clear");
    }
    RigRun run = RigRun.of(script.at(11, "end"), folder);
    run.everyEdgeIsTold();
    run.noStampIsLaterThanItSays();
  }

  /** The counter is brought near its wrap by skipping; SoakTrial waits for it. */
  @Test
  void acrossTheWrapOf32BitsIntervalsAreRight() {
    Script script = new Script();
    for (int i = 0; i < 326; i++) {
      script.at(0.5 + 0.01 * i, "skip 200");
    }
    for (int i = 0; i < 100; i++) {
      script.arrow(4 + 0.06 * i, 200, 0.75);
    }
    RigRun run = RigRun.of(script.at(3.8, "skip 120").at(11.5, "end"), folder);
    run.everyEdgeIsTold();
    run.intervalsAreRight();
    List<RigRun.Told> told = run.told();
    assertThat(told.get(0).ticks()).isGreaterThan(4_280_000_000L);
    assertThat(told.get(told.size() - 1).ticks()).isLessThan(10_000_000L);
    assertThat(run.last('H').number(3)).isGreaterThan(1L << 32);
  }

  @Test
  void whileTheBoardSpeaksStampsAreAsGood() {
    Random random = new Random(Seed.of(CloseEdgesTest.class));
    Script script = new Script();
    for (int i = 0; i < 300; i++) {
      double at = 1 + 0.03 * i; // 4 lines of 3.5 ms, and what the host asks for again
      script.arrow(at + 0.003 * random.nextDouble(), 340, 0.5);
      if (i % 10 == 0) {
        script.at(at + 0.001, "say R,0," + (i == 0 ? 1 : 4 * i - 3));
      }
    }
    RigRun run = RigRun.of(script.at(12.5, "end"), folder);
    Heard beat = run.last('H');
    assertThat(beat.number(6) + beat.number(7)).isZero();
    assertThat(beat.number(5)).isEqualTo(1200);
    run.linesAreWhole();
    run.onceEach().everyEdgeIsTold();
    run.onceEach().noStampIsLaterThanItSays();
  }

  @Test
  void whileTheHostSpeaksStampsSayHowLateTheyMayBe() {
    Random random = new Random(Seed.of(CloseEdgesTest.class));
    Script script = new Script();
    for (int i = 0; i < 300; i++) {
      script.at(1 + 0.0095 * i, "say " + "x".repeat(100)); // more than the line carries
    }
    for (int i = 0; i < 120; i++) {
      script.arrow(1 + 0.023 * i + 0.002 * random.nextDouble(), 340, 0.5);
    }
    RigRun run = RigRun.of(script.at(6, "end"), folder);
    run.everyEdgeIsTold();
    run.noStampIsLaterThanItSays();
    long marked = run.told().stream().filter(edge -> edge.late() > 0).count();
    System.out.printf("%d of %d stamps may be late%n", marked, run.told().size());
    assertThat(marked).isPositive();
  }

  @Test
  void flickerOfALampOnBothGatesIsCountedToTheLastEdge() {
    for (double hertz : new double[] {100, 120}) {
      Script script =
          new Script().flicker('A', 1, 11, hertz).flicker('B', 1.001, 11, hertz).at(14, "end");
      RigRun run = RigRun.of(script, folder);
      nothingIsSilentlyLost(run);
      run.linesAreWhole();
      assertThat(run.last('H').number(7)).as("more than the wire carries").isPositive();
      System.out.printf(
          "%.0f Hz on both gates for 10 s: %d edges, %d told, %d dropped%n",
          hertz, run.injected().size(), run.last('H').number(5), run.last('H').number(7));
    }
  }

  @Test
  void aChatteringGateIsToldOfInSumsAndTheOtherGateStillStampsArrows() {
    Script script = new Script().flicker('A', 1, 4, 2000);
    for (int i = 0; i < 5; i++) {
      double at = 1.6 + 0.4 * i;
      script.at(at, "B blocked").at(at + 0.0123, "B clear");
    }
    script.arrow(6, 180, 0.75).at(8.5, "end");
    RigRun run = RigRun.of(script, folder);
    nothingIsSilentlyLost(run);
    assertThat(RigRun.ofGate(run.told(), 'B')).hasSize(12);
    assertThat(RigRun.ofGate(run.told(), 'A')).as("32 before it stops, and the arrow").hasSize(34);
    assertThat(run.heard('L').count()).as("ten a second at most").isBetween(25L, 36L);
    assertThat(run.heard('L')).allMatch(line -> line.text(3).equals("A"));
  }

  @Test
  void burstsFasterThanTheBoardCanThinkAreCountedToo() {
    Script script = new Script();
    for (int burst = 0; burst < 20; burst++) {
      for (int i = 0; i < 200; i++) {
        script.at(1 + 0.3 * burst + 12 * MICRO * i, "A " + (i % 2 == 0 ? "blocked" : "clear"));
      }
    }
    script.arrow(7.5, 150, 0.75);
    RigRun run = RigRun.of(script.at(9.5, "end"), folder);
    nothingIsSilentlyLost(run);
    assertThat(run.last('H').number(7)).isPositive();
    List<RigRun.Told> told = run.told();
    assertThat(told.subList(told.size() - 4, told.size()).stream().map(RigRun.Told::kind).toList())
        .containsExactly('B', 'B', 'C', 'C');
  }
}
