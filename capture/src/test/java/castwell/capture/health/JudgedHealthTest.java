package castwell.capture.health;

import static castwell.capture.view.health.Level.ATTENTION;
import static castwell.capture.view.health.Level.BAD;
import static castwell.capture.view.health.Level.CANT_TELL;
import static castwell.capture.view.health.Level.WELL;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import castwell.analysis.speed.Oscillator;
import castwell.capture.English;
import castwell.capture.station.LinkState.State;
import castwell.capture.view.health.Level;
import castwell.capture.wire.Fault;
import castwell.capture.wire.Sentence.Levels;
import java.time.Duration;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What is told of a station by its numbers, each disturbance by itself. */
class JudgedHealthTest {
  private static final Levels CLEAR = new Levels(false, false);

  private static void assertTold(Item item, Level level, String... words) {
    assertThat(item.level()).as("%s", item).isEqualTo(level);
    assertThat(words).allSatisfy(word -> assertThat(English.say(item.sentence())).contains(word));
    assertThat(English.say(item.remedy())).endsWith(".");
  }

  /** So many newest beats with this light, for a steady one to be told. */
  private static Station lit(Station station, int lightA, int lightB) {
    for (int i = 0; i < 10; i++) {
      station.beat(lightA, lightB, Station.MV, CLEAR);
    }
    return station;
  }

  @Test
  void whereNothingIsWrongAllIsWell() {
    Health health = Station.well().health();
    assertThat(health.items()).allSatisfy(item -> assertTold(item, WELL));
    assertThat(health.level()).isEqualTo(WELL);
    assertThat(health.items())
        .extracting(item -> English.say(item.sentence()))
        .doesNotHaveDuplicates();
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"SEARCHING", "OFFLINE", "UNPLUGGED"})
  void aBoardThatDoesNotBeatIsBadAndItsLastLightTellsNothing(State state) {
    Station station = Station.well().link(state).withoutBeats();
    assertTold(station.item("port"), BAD, "/dev/ttyACM0");
    assertTold(station.item("heartbeat"), BAD);
    assertTold(station.item("light A"), CANT_TELL);
    assertTold(station.item("supply"), CANT_TELL);
    assertThat(station.health().level()).isEqualTo(BAD);
  }

  @Test
  void beatsThatGoMissingAreCountedByTheBoardsOwnClock() {
    assertTold(Station.well().item("heartbeat"), WELL, "every 1.000 s", "0 are missing");
    Station few = Station.well().miss(2).edges(0, 0, 0);
    assertTold(few.item("heartbeat"), ATTENTION, "of the last 63 beats 2 are missing");
    Station many = Station.well().miss(20).edges(0, 0, 0);
    assertTold(many.item("heartbeat"), BAD, "20 are missing");
  }

  @ParameterizedTest
  @CsvSource({"812, WELL", "790, WELL", "760, ATTENTION", "500, ATTENTION", "400, BAD"})
  void lessLightThanUsualIsToldByHowMuch(int light, Level level) {
    Item item = lit(Station.well(), light, Station.LIGHT_B).item("light A");
    assertTold(item, level, light + " of 1023, usually 812", "20 earlier readings");
    assertThat(item.measured().orElseThrow()).isEqualTo(Measured.of(light, "of 1023", 10));
    assertThat(lit(Station.well(), light, Station.LIGHT_B).item("light B").level()).isEqualTo(WELL);
  }

  @Test
  void moreLightThanUsualIsSunAndTheEndOfTheScaleNeedsNoHistory() {
    Item more = lit(Station.well(), 930, Station.LIGHT_B).item("light A");
    assertTold(more, ATTENTION);
    assertThat(English.say(more.remedy())).contains("sun");
    Station blinded = lit(Station.well().withoutHistory(), 1023, Station.LIGHT_B);
    assertTold(blinded.item("light A"), ATTENTION, "end of its scale");
  }

  @Test
  void oneOddReadingIsNoChange() {
    Station flicker = Station.well().beat(300, Station.LIGHT_B, Station.MV, CLEAR);
    assertTold(flicker.item("light A"), WELL);
  }

  @Test
  void withTooLittleHistoryNothingIsCompared() {
    Station young = Station.well().withoutHistory();
    for (int i = 1; i < Usual.FEWEST; i++) {
      young.earlier(400, 400, 4000);
    }
    assertTold(young.item("light A"), CANT_TELL, "812 of 1023");
    assertTold(young.item("supply"), CANT_TELL, "5010 mV");
    young.earlier(400, 400, 4000);
    assertTold(young.item("light A"), ATTENTION, "usually 400");
  }

  @Test
  void lightIsComparedWhileItsBeamIsClear() {
    Station planState = Station.well();
    for (int i = 0; i < 10; i++) {
      planState.beat(140, Station.LIGHT_B, Station.MV, new Levels(true, false));
    }
    assertTold(planState.item("light A"), BAD, "Gate A is blocked");
    assertTold(planState.item("light B"), WELL);
    Station passing =
        Station.well().beat(140, Station.LIGHT_B, Station.MV, new Levels(true, false));
    assertTold(passing.item("light A"), WELL, "812");
  }

  @ParameterizedTest
  @CsvSource({"5010, WELL", "4800, WELL", "4700, ATTENTION", "4400, BAD", "5400, ATTENTION"})
  void supplyIsComparedWithWhatItUsuallyIs(int mv, Level level) {
    Station station = Station.well().withoutBeats();
    for (int i = 0; i < 20; i++) {
      station.beat(Station.LIGHT_A, Station.LIGHT_B, mv, CLEAR);
    }
    assertTold(station.item("supply"), level, mv + " mV, usually 5010 mV");
  }

  /** 50 ppm is what a crystal may be off; beyond it by twice the uncertainty refutes it. */
  @ParameterizedTest
  @CsvSource({
    "CRYSTAL, 20e-6, 30e-6, WELL",
    "CRYSTAL, 105e-6, 30e-6, WELL",
    "CRYSTAL, -115e-6, 30e-6, ATTENTION",
    "CRYSTAL, 1700e-6, 900e-6, CANT_TELL",
    "RESONATOR, -1700e-6, 30e-6, WELL",
    "RESONATOR, 5200e-6, 30e-6, ATTENTION",
  })
  void theBoardsClockMayBeOffByWhatKeepsItsTime(
      Oscillator oscillator, double error, double u, Level level) {
    Item item = Station.well().clock(oscillator, error, u).item("board's clock");
    assertTold(item, level, error < 0 ? "slower" : "faster", "gate-1");
    Measured measured = item.measured().orElseThrow();
    assertThat(measured.value()).isCloseTo(error * 1e6, offset(1e-6));
    assertThat(measured.u().getAsDouble()).isCloseTo(u * 1e6, offset(1e-6));
  }

  @Test
  void edgesThatFellTogetherAreToldByTheirShare() {
    assertTold(Station.well().edges(8, 2, 0).item("edges"), WELL, "Of 8 edges");
    assertTold(Station.well().edges(97, 0, 3).item("edges"), ATTENTION, "3 were dropped");
    assertTold(Station.well().edges(20, 4, 0).item("edges"), BAD, "4 fell together");
  }

  @Test
  void faultsAreJudgedByTheirRateNotByTheirSum() {
    assertTold(Station.well().item("faults"), WELL, "None in the last 2 h");
    Station noisy = Station.well().fault(Fault.BAD_CRC, 100);
    assertTold(noisy.item("fault bad crc"), ATTENTION, "100 in the last 2 h");
    assertThat(noisy.item("fault bad crc").measured().orElseThrow())
        .isEqualTo(Measured.of(50, "an hour", 100));
    assertTold(
        noisy.listenedFor(Duration.ofHours(5)).item("fault bad crc"), WELL, "in the last 5 h");
    assertTold(Station.well().fault(Fault.BAD_CRC, 1000).item("fault bad crc"), BAD);
    assertTold(Station.well().fault(Fault.REPEATED_EDGE, 9000).item("fault repeated edge"), WELL);
    assertTold(Station.well().fault(Fault.LOST_EDGE, 2).item("fault lost edge"), ATTENTION);
    Station justBegun = Station.well().fault(Fault.GARBAGE, 3).listenedFor(Duration.ofSeconds(2));
    assertTold(justBegun.item("fault garbage"), WELL);
  }

  @ParameterizedTest
  @EnumSource(Fault.class)
  void everyFaultHasItsWords(Fault fault) {
    String name = "fault " + fault.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    Item item = Station.well().fault(fault, 1_000_000).item(name);
    assertThat(English.say(item.sentence())).doesNotStartWith("Other faults");
    assertThat(English.say(item.remedy())).isNotBlank();
  }

  @Test
  void aStoreThatTakesNothingIsBad() {
    Station full = Station.well().trouble("The disk of /data is full: free some space.", 3);
    assertTold(full.item("store"), BAD, "disk of /data is full", "3 passages");
  }

  @Test
  void aBrokerIsToldOfOnlyWhereThereIsOne() {
    assertThat(Station.well().health().items()).extracting(Item::name).doesNotContain("broker");
    assertTold(Station.well().broker(true, 2).item("broker"), WELL, "2 messages wait");
    assertTold(Station.well().broker(false, 5000).item("broker"), ATTENTION, "5000 messages wait");
    assertTold(Station.well().broker(true, 5000).item("broker"), ATTENTION);
  }

  /** As many shots, to either side of a mean by turns. */
  private static double[] residuals(int n, double meanM) {
    return IntStream.range(0, n).mapToDouble(i -> meanM + (i % 2 == 0 ? 0.001 : -0.001)).toArray();
  }

  @Test
  void lateTailsOfTheSessionThatGoesOnAreToldWithBothTheirCauses() {
    Item item = Station.well().shots(residuals(20, -0.0061)).item("gates");
    assertTold(item, ATTENTION, "20 arrows", "6.1 ± 0.3 mm late", "butt", "gate B sees more");
    assertThat(item.measured().orElseThrow().value()).isCloseTo(6.1, offset(1e-9));
    assertThat(item.measured().orElseThrow().n()).hasValue(20);
  }

  @Test
  void earlyTailsAreNotTheButtsDoing() {
    Item item = Station.well().shots(residuals(20, 0.003)).item("gates");
    assertTold(item, ATTENTION, "3.0 ± 0.3 mm early", "gate A sees more");
    assertThat(English.say(item.sentence())).doesNotContain("butt");
  }

  @Test
  void gatesThatAgreeOverTwentyArrowsAreWell() {
    assertTold(Station.well().shots(residuals(20, 0)).item("gates"), WELL, "20 arrows");
  }

  @Test
  void aGateThatMovedMeanwhileIsTold() {
    double[] moved = IntStream.range(0, 40).mapToDouble(i -> 0.0001 * (i - 20)).toArray();
    assertTold(Station.well().shots(moved).item("gates"), ATTENTION, "3.9", "40 arrows", "changed");
  }

  @Test
  void ofNineArrowsNothingIsSaid() {
    assertThat(Station.well().shots(residuals(9, -0.0061)).health().items())
        .noneMatch(item -> item.name().equals("gates"));
  }

  @Test
  void aSpacingThatNobodyMeasuredIsTold() {
    assertTold(Station.well().unmeasured().item("spacing"), CANT_TELL, "Nobody measured");
    assertThat(Station.well().health().items()).noneMatch(item -> item.name().equals("spacing"));
  }
}
