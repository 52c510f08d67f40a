package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What the board answers, and what else it says of itself; the wire's contract is the measure. */
@Tag("rig")
@Timeout(300)
class AskedBoardTest {
  private static final double HEARTBEAT_DITHER_S = 0.008;

  @TempDir Path folder;

  private static Script arrows(int count) {
    Script script = new Script();
    for (int i = 0; i < count; i++) {
      script.arrow(1 + 0.1 * i, 170, 0.7);
    }
    return script;
  }

  @Test
  void askedForEdgesItSaysThemAgainWithNewLinesAndTheSameNumbers() {
    RigRun run = RigRun.of(arrows(5).at(3, "say R,0,5").at(4, "end"), folder);
    List<Long> numbers = run.told().stream().map(RigRun.Told::number).toList();
    assertThat(numbers)
        .containsExactlyElementsOf(
            LongStream.concat(LongStream.rangeClosed(1, 20), LongStream.rangeClosed(5, 20))
                .boxed()
                .toList());
    run.linesAreWhole();
    run.onceEach().everyEdgeIsTold();
    assertThat(run.heard('M')).isEmpty();
  }

  @Test
  void whatItNoLongerKeepsItNamesFirst() {
    RigRun run = RigRun.of(arrows(50).at(7, "say R,0,3").at(8.5, "end"), folder);
    long keep = run.last('I').number(10);
    assertThat(keep).isGreaterThanOrEqualTo(64);
    Heard missing = run.last('M');
    assertThat(missing.number(3)).isEqualTo(3);
    assertThat(missing.number(4)).isEqualTo(200 - keep);
    List<Heard> after = run.heard().subList(run.heard().indexOf(missing) + 1, run.heard().size());
    assertThat(
            after.stream().filter(line -> line.type() == 'E').map(line -> line.number(3)).toList())
        .containsExactlyElementsOf(LongStream.rangeClosed(200 - keep + 1, 200).boxed().toList());
  }

  @Test
  void anotherBootsEdgesAskedForItSaysWhoItIsAlone() {
    RigRun run = RigRun.of(arrows(2).at(2, "say R,7,1").at(3, "end"), folder);
    assertThat(run.heard('I')).hasSize(2);
    assertThat(run.told()).hasSize(8);
  }

  @Test
  void nonsenseIsPassedOverAndTheNextQuestionHeard() {
    Script script = arrows(1);
    List<String> nonsense =
        List.of("R,0", "R,0,x", "R,,1", "R,0,99999999999999999999", "??", "r,0,1", "R,0,1,2", ",");
    for (int i = 0; i < nonsense.size(); i++) {
      script.at(2 + 0.1 * i, "say " + nonsense.get(i));
    }
    script.at(3, "say " + "x".repeat(200)).at(3.2, "say ?").at(4, "end");
    RigRun run = RigRun.of(script, folder);
    assertThat(run.heard('I')).hasSize(2);
    assertThat(run.told()).hasSize(4);
  }

  @Test
  void itSaysWhoItIsEveryMinuteAndBeatsEverySecondUnevenly() {
    RigRun run = RigRun.of(new Script().at(185, "end"), folder);
    assertThat(run.heard('I')).hasSize(4);
    List<Heard> beats = run.heard('H').toList();
    assertThat(beats).hasSizeBetween(180, 188);
    double[] periods = new double[beats.size() - 1];
    for (int i = 1; i < beats.size(); i++) {
      periods[i - 1] = (beats.get(i).number(3) - beats.get(i - 1).number(3)) / 2e6;
      assertThat(periods[i - 1]).isCloseTo(1, within(HEARTBEAT_DITHER_S + 0.008));
    }
    double mean =
        LongStream.range(0, periods.length).mapToDouble(i -> periods[(int) i]).sum()
            / periods.length;
    double variance = 0;
    for (double period : periods) {
      variance += Math.pow(period - mean, 2) / periods.length;
    }
    // A uniform spread of 16 ms has a standard deviation of 16 / sqrt(12) = 4.6 ms.
    assertThat(Math.sqrt(variance)).isBetween(0.0035, 0.006);
  }

  @Test
  void itMeasuresLightSupplyAndItsOwnWarmth() {
    Script script =
        new Script().at(0.1, "light A 812").at(0.1, "light B 45").at(1.5, "supply 4800");
    RigRun run = RigRun.of(script.at(1.5, "warmth 380").at(4, "end"), folder);
    Heard early = run.heard('H').skip(1).findFirst().orElseThrow();
    assertThat(early.number(9)).isCloseTo(812, within(2L));
    assertThat(early.number(10)).isCloseTo(45, within(2L));
    assertThat(early.number(11)).isCloseTo(5000, within(40L));
    // ATmega328P data sheet, temperature measurement: 314 mV at 25 degrees, 380 mV at 85 degrees.
    assertThat(early.number(12)).isCloseTo(2500, within(200L));
    Heard late = run.last('H');
    assertThat(late.number(11)).isCloseTo(4800, within(40L));
    assertThat(late.number(12)).isCloseTo(8500, within(200L));
    assertThat(late.text(13) + late.text(14)).as("it has no sensor of the air").isEmpty();
  }

  @Test
  void aBouncingKeyIsOnePressAndAHeldOneIsLong() {
    Script script = new Script();
    for (int i = 0; i < 8; i++) {
      script.at(1 + 0.001 * i, i % 2 == 0 ? "key down" : "key up");
      script.at(1.2 + 0.001 * i, i % 2 == 0 ? "key up" : "key down");
    }
    script.at(1.009, "key down").at(1.209, "key up");
    script.at(2, "key down").at(2.005, "key up"); // a spike
    script.at(3, "key down").at(5, "key up");
    RigRun run = RigRun.of(script.at(6, "end"), folder);
    List<Heard> keys = run.heard('K').toList();
    assertThat(keys.stream().map(line -> line.text(3) + line.text(4)).toList())
        .containsExactly("1S", "1L");
    assertThat(keys.get(0).number(5) / 2e6).isCloseTo(1.0, within(0.025));
    assertThat(keys.get(1).number(5) / 2e6).isCloseTo(3.0, within(0.025));
    assertThat(keys.get(1).micros() / 1e6).as("told while held").isLessThan(4.0);
  }

  @Test
  void itTellsWhyItStarted() {
    Script script =
        new Script()
            .at(1, "reset pin")
            .at(2, "reset brown-out")
            .at(3, "hang")
            .at(5, "reset power")
            .at(6, "end");
    RigRun run = RigRun.of(script, folder);
    assertThat(run.heard('I').map(line -> line.text(11)).toList())
        .containsExactly("P", "E", "B", "W", "P");
    assertThat(run.heard('I').map(line -> line.number(5)).toList())
        .containsExactly(0L, 1L, 2L, 3L, 4L);
    assertThat(run.heard('I').skip(3).findFirst().orElseThrow().micros())
        .as("the watchdog waits half a second")
        .isBetween(3_400_000L, 3_700_000L);
  }
}
