package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.speed.Calibration;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Figure;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The gates were measured anew, afterwards. v = d / t: a speed goes as the spacing. */
class RecalibrationTest {
  private static final String NAME = "clean-five";
  private static final List<String> RAW =
      List.of("edge", "heartbeat", "identity", "loss", "missing", "listening", "board", "shot_tag");

  /** The tick rate may follow the last heartbeats, which moved it too little to be worth a row. */
  private static final double RATE = 2e-6;

  @TempDir Path folder;

  private static Calibration spacing(double metres) {
    return new Calibration(
        metres,
        0.0004,
        RangeBench.GATES.triggerScatterM(),
        RangeBench.GATES.gatesFromBowM(),
        RangeBench.GATES.oscillator());
  }

  private RangeBench replayed() throws Exception {
    RangeBench bench = RangeBench.in(folder);
    bench.replay(Path.of(getClass().getResource("/recordings/" + NAME + ".rec").toURI()));
    return bench;
  }

  private static Map<String, List<String>> raw(RangeBench bench) {
    Map<String, List<String>> raw = new LinkedHashMap<>();
    RAW.forEach(table -> raw.put(table, bench.tables().dump(table)));
    return raw;
  }

  private static double speed(Figure figure) {
    return figure.speedMps().orElseThrow();
  }

  /** Of somebody's own measuring nothing is lost when the settings come to say other errors. */
  @Test
  void errorsOfTheSettingsAreTakenByTheGatesThatSomebodyMeasured() throws Exception {
    try (RangeBench bench = replayed()) {
      Instant now = bench.shots(NAME).get(4).fired().plusSeconds(60);
      Calibration set = RangeBench.GATES.unmeasured();
      bench.commands().calibrateUnlessSaid(NAME, now, set, "the configuration");
      bench.commands().calibrate(NAME, now, spacing(0.6123), "a person");
      for (int start = 0; start < 2; start++) {
        bench
            .commands()
            .calibrateUnlessSaid(NAME, now, set.with(SetUpErrors.USUAL), "the configuration");
      }
      List<Calibration> entered =
          bench.store().read(t -> t.calibrations().of(NAME)).stream()
              .map(Calibrations.Entry::calibration)
              .toList();
      assertThat(entered.subList(1, entered.size()))
          .containsExactly(set, spacing(0.6123), spacing(0.6123).with(SetUpErrors.USUAL));
    }
  }

  @Test
  void everySpeedChangesAndNoRawFact() throws Exception {
    try (RangeBench bench = replayed()) {
      List<Shot> before = bench.shots(NAME);
      Map<String, List<String>> facts = raw(bench);
      int covered =
          bench.commands().calibrate(NAME, before.get(0).fired(), spacing(0.6100), "a person");
      assertThat(covered).isEqualTo(5);
      assertThat(raw(bench)).isEqualTo(facts);
      List<Shot> after = bench.shots(NAME);
      for (int i = 0; i < 5; i++) {
        assertThat(speed(after.get(i).figure()) / speed(before.get(i).figure()))
            .isCloseTo(0.6100 / 0.6096, within(RATE));
        assertThat(after.get(i).shotId()).isEqualTo(before.get(i).shotId());
      }
    }
  }

  @Test
  void theOldFiguresAreStillTold() throws Exception {
    try (RangeBench bench = replayed()) {
      List<Shot> before = bench.shots(NAME);
      bench.commands().calibrate(NAME, before.get(0).fired(), spacing(0.6100), "a person");
      bench.commands().calibrate(NAME, before.get(0).fired(), spacing(0.6050), "a person");
      for (Shot shot : before) {
        List<Figure> told = bench.store().read(t -> t.figures().history(shot.passageId()));
        List<Double> ratios = new ArrayList<>();
        told.forEach(figure -> ratios.add(speed(figure) / speed(shot.figure()) * 0.6096));
        assertThat(ratios)
            .usingComparatorForType((a, b) -> Math.abs(a - b) < RATE ? 0 : 1, Double.class)
            .containsExactly(0.6096, 0.6100, 0.6050);
        assertThat(told.get(0)).isEqualTo(shot.figure());
      }
    }
  }

  @Test
  void onlyShotsFromThatInstantOnAreCovered() throws Exception {
    try (RangeBench bench = replayed()) {
      List<Shot> before = bench.shots(NAME);
      bench.commands().calibrate(NAME, before.get(3).fired(), spacing(0.6100), "a person");
      List<Shot> after = bench.shots(NAME);
      for (int i = 0; i < 5; i++) {
        boolean same = after.get(i).figure().equals(before.get(i).figure());
        assertThat(same).as("shot " + i).isEqualTo(i < 3);
      }
    }
  }

  @Test
  void otherStationsAreLeftAlone() throws Exception {
    try (RangeBench bench = replayed()) {
      List<Shot> before = bench.shots(NAME);
      bench.commands().calibrate("elsewhere", before.get(0).fired(), spacing(0.6100), "a person");
      assertThat(bench.shots(NAME)).isEqualTo(before);
    }
  }

  /** A later shot goes by the newest gates, and a second replay by what is in force since. */
  @Test
  void aReplayAfterwardsChangesNothing() throws Exception {
    try (RangeBench bench = replayed()) {
      bench
          .commands()
          .calibrate(NAME, bench.shots(NAME).get(0).fired(), spacing(0.6100), "a person");
      List<Shot> before = bench.shots(NAME);
      bench.replay(Path.of(getClass().getResource("/recordings/" + NAME + ".rec").toURI()));
      assertThat(bench.shots(NAME)).isEqualTo(before);
    }
  }
}
