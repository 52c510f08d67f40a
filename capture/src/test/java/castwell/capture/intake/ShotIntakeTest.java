package castwell.capture.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.wording.Phrase;
import castwell.capture.English;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Shots that somebody wrote down. */
class ShotIntakeTest {
  @TempDir Path folder;
  private IntakeBench bench;

  @BeforeEach
  void open() {
    bench = new IntakeBench(folder).withRack();
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private Taken take(String csv) {
    return bench.take(SheetKind.SHOTS, csv);
  }

  private Shot only(String csv) {
    take(csv);
    assertThat(bench.shots()).hasSize(1);
    return bench.shots().get(0);
  }

  @Test
  void threeColumnsAreEnough() {
    Taken taken = take("bow,arrow,speed_fps\nash,a1,150\nYew,A2,161.5\n");
    assertThat(English.say(taken.phrase()))
        .isEqualTo(
            "2 shots taken in, 0 set aside, 0 already there: castwell report bow NAME says what they mean.");
    Shot first = bench.shots().get(0);
    assertThat(first.bow().map(BowState::bow)).contains("Ash");
    assertThat(first.arrow().orElseThrow().name()).isEqualTo("A1");
    assertThat(first.figure().speedMps().orElseThrow()).isCloseTo(45.72, within(1e-9));
    assertThat(first.counts()).isTrue();
    assertThat(first.station()).isEqualTo("by-hand");
    assertThat(first.session()).isEqualTo("2026-06-01");
    assertThat(first.origin()).isEqualTo(new Shot.ByHand("paper.csv, line 2", ""));
    assertThat(bench.shots()).extracting(Shot::fired).isSorted().doesNotHaveDuplicates();
  }

  /** Whole ft/s: a rectangle one wide has the standard deviation 1/sqrt(12) (JCGM 100, F.2.2.1). */
  @Test
  void aSpeedThatDoesntTellItsUncertaintyHasTheUsualOne() {
    Shot shot = only("bow,arrow,speed_fps\nAsh,A1,150\n");
    assertThat(shot.figure().speedUOwnMps().orElseThrow() / 0.3048)
        .isCloseTo(0.288675, within(1e-6));
    assertThat(shot.figure().speedUCommonMps().orElseThrow() / 0.3048)
        .isCloseTo(0.75, within(1e-9));
  }

  @Test
  void oneThatTellsItsUncertaintyKeepsIt() {
    Shot shot = only("bow,arrow,speed_mps,speed_u_own_fps,speed_u_common_mps\nAsh,A1,45,0.5,0.2\n");
    assertThat(shot.figure().speedUOwnMps().orElseThrow()).isCloseTo(0.1524, within(1e-9));
    assertThat(shot.figure().speedUCommonMps()).hasValue(0.2);
  }

  @Test
  void aDayAloneKeepsTheLinesOrder() {
    take(
        "bow,arrow,speed_fps,fired_at,session\nAsh,A1,150,2026-04-10,\nAsh,A1,151,2026-05-10,\nAsh,A1,152,2026-04-10,\nAsh,A1,153,,2026-04-10\n");
    assertThat(bench.shots())
        .extracting(Shot::fired)
        .containsExactly(
            Instant.parse("2026-04-10T10:00:00Z"),
            Instant.parse("2026-04-10T10:00:01Z"),
            Instant.parse("2026-04-10T10:00:02Z"),
            Instant.parse("2026-05-10T10:00:00Z"));
    assertThat(bench.shots())
        .extracting(Shot::session)
        .containsExactly("2026-04-10", "2026-04-10", "2026-04-10", "2026-05-10");
    assertThat(bench.shots())
        .extracting(shot -> shot.bow().orElseThrow().drawWeightN() / 4.4482216)
        .satisfiesExactly(
            n -> assertThat(n).isCloseTo(50, within(1e-3)),
            n -> assertThat(n).isCloseTo(50, within(1e-3)),
            n -> assertThat(n).isCloseTo(50, within(1e-3)),
            n -> assertThat(n).isCloseTo(48, within(1e-3)));
  }

  @Test
  void aSessionsDayIsTheLocalOne() {
    Shot shot = only("bow,arrow,speed_fps,fired_at\nAsh,A1,150,2026-04-10T23:30Z\n");
    assertThat(shot.fired()).isEqualTo(Instant.parse("2026-04-10T23:30:00Z"));
    assertThat(shot.session()).isEqualTo("2026-04-11");
  }

  @Test
  void aSessionThatIsThereIsJoinedAnotherBegun() {
    take("bow,arrow,speed_fps,session,station,end\nAsh,A1,150,windy,barn,2\n");
    take("bow,arrow,speed_fps,session\nAsh,A1,151,windy\nAsh,A1,151,calm\n");
    assertThat(bench.shots())
        .extracting(Shot::session)
        .containsExactlyInAnyOrder("windy", "windy", "calm");
    assertThat(bench.store().<Integer>read(t -> t.sessions().all().size())).isEqualTo(2);
    assertThat(bench.shots().get(0).station()).isEqualTo("barn");
    assertThat(bench.shots().get(0).end()).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource({
    "false, short draw, windy, verdict.set_aside_because|short draw",
    "no, , windy, verdict.set_aside_because|windy",
    "0, , , verdict.set_aside_because|set aside in paper.csv",
    "FALSE, Set aside: short draw., , verdict.set_aside_because|short draw",
    "false, Too slow for an arrow., , as_is|Too slow for an arrow."
  })
  void whatDoesntCountIsSetAsideWithItsReason(
      String counts, String reason, String note, String told) {
    Shot shot =
        only(
            "bow,arrow,speed_fps,counts,reason,note\nAsh,A1,150,%s,%s,%s\n"
                .formatted(counts, reason == null ? "" : reason, note == null ? "" : note));
    assertThat(shot.counts()).isFalse();
    assertThat(shot.reasons().toString()).isEqualTo("[" + told + "]");
    assertThat(shot.decision().orElseThrow().by()).isEqualTo("import");
  }

  @Test
  void whatAPersonLetCountIsBroughtBack() {
    Shot shot =
        only("bow,arrow,speed_fps,counts,judged_by,reason\nAsh,A1,15,yes,person,I saw it\n");
    assertThat(shot.counts()).isTrue();
    assertThat(shot.judgedByPerson()).isTrue();
    assertThat(shot.reasons())
        .containsExactly(Phrase.of("verdict.brought_back_because", "I saw it"));
  }

  @Test
  void aSpeedMayBeEmptyWhereItDoesntCount() {
    Shot shot = only("bow,arrow,speed_fps,counts\nAsh,A1,,no\n");
    assertThat(shot.figure().speedMps()).isEmpty();
    assertThat(shot.counts()).isFalse();
  }

  @Test
  void theSameFileAgainAddsNothing() {
    String csv = "bow,arrow,speed_fps\nAsh,A1,150\nAsh,A1,150\n";
    assertThat(take(csv).taken()).isEqualTo(2);
    Taken again = take(csv);
    assertThat(again.taken()).isZero();
    assertThat(again.already()).isEqualTo(2);
    assertThat(take("bow,arrow,speed_fps\nAsh,A1,150\n").taken()).isEqualTo(1);
  }

  @Test
  void aDatedFileThatGrewAddsItsNewLinesAlone() {
    String csv = "bow,arrow,speed_fps,fired_at\nAsh,A1,150,2026-05-01\nAsh,A1,150,2026-05-01\n";
    take(csv);
    Taken grown = take(csv + "Ash,A1,150,2026-05-01\nAsh,A1,151,2026-05-01\n");
    assertThat(grown.taken()).isEqualTo(2);
    assertThat(grown.already()).isEqualTo(2);
    assertThat(bench.take(SheetKind.SHOTS, "evening.csv", csv).taken()).isEqualTo(2);
  }

  @Test
  void oneNamedAlreadyIsLeftAlone() {
    take("shot_id,bow,arrow,speed_fps\ngate.1.5,Ash,A1,150\n");
    Taken again = take("shot_id,bow,arrow,speed_fps\ngate.1.5,Yew,A2,160\ngate.1.9,,,160\n");
    assertThat(again.taken()).isEqualTo(1);
    assertThat(again.already()).isEqualTo(1);
    assertThat(bench.shots())
        .filteredOn(shot -> shot.shotId().equals("gate.1.5"))
        .extracting(shot -> shot.bow().orElseThrow().bow())
        .containsExactly("Ash");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          Esh,A1,150,,,,,|bow "Esh" isn't on the rack: mend it if Ash is meant, or import the bows first.
          Hornbeam,A1,150,,,,,|bow "Hornbeam" isn't on the rack: mend it, or import the bows first.
          Ash,B7,150,,,,,|arrow "B7" isn't on the rack: mend it, or import the arrows first.
          ,A1,150,,,,,|bow is empty.
          Ash,,150,,,,,|arrow is empty.
          Ash,A1,fast,,,,,|speed_fps "fast" isn't a number: write one such as 152.3.
          Ash,A1,-150,,,,,|speed_fps "-150" is less than 0: mend it.
          Ash,A1,0,,,no,,|speed_fps "0" is no speed: mend it, or leave it empty.
          Ash,A1,15,,,,,|speed_fps "15" is no arrow's speed, which lies between 66 and 427 ft/s
          Ash,A1,,,,,,|It has no speed: give it one
          Ash,A1,150,1.5.2026,,,,|fired_at "1.5.2026" isn't a date: write it as 2026-05-01
          Ash,A1,150,,a b,,,|station "a b" can't be a station's name
          Ash,A1,150,,,maybe,,|counts "maybe" is neither yes nor no: write true or false.
          Ash,A1,150,,,,robot,|judged_by "robot" is unknown
          Ash,A1,150,,,,,0|end "0" isn't a whole number from 1 on: mend it.
          Ash,A1,150,,,,,1,2|It has 9 cells under 8 headings
          """)
  void eachBadLineIsNamed(String line, String told) {
    String headings = "bow,arrow,speed_fps,fired_at,station,counts,judged_by,end\n";
    List<String> said =
        bench.refused(
            SheetKind.SHOTS, headings + "Ash,A1,150,,,,,\n" + line + "\nYew,A2,150,,,,,\n");
    assertThat(said).singleElement().asString().startsWith("3: " + told);
    assertThat(bench.shots()).isEmpty();
  }

  @Test
  void allBadLinesAreNamedAtOnceAndNothingIsStored() {
    List<String> said =
        bench.refused(
            SheetKind.SHOTS,
            "bow,arrow,speed_fps,shot_id\nAsh,A1,150,x\nElm,A1,150,y\nAsh,A1,1e,z\nAsh,A1,151,x\n");
    assertThat(said)
        .hasSize(3)
        .satisfiesExactly(
            one -> assertThat(one).startsWith("3: bow \"Elm\""),
            one -> assertThat(one).startsWith("4: speed_fps \"1e\""),
            one -> assertThat(one).isEqualTo("5: Line 2 is about x too: leave one of them out."));
    assertThat(bench.shots()).isEmpty();
  }

  @Test
  void manyShotsAreToldOfOnce() {
    long before = bench.store().read(t -> t.feed().last());
    String lines =
        IntStream.range(0, 300)
            .mapToObj(i -> "Ash,A1," + (140 + i % 20))
            .collect(Collectors.joining("\n"));
    take("bow,arrow,speed_fps\n" + lines);
    assertThat(bench.store().<Long>read(t -> t.feed().last())).isEqualTo(before + 1);
    assertThat(bench.shots()).hasSize(300).extracting(Shot::fired).isSorted();
  }

  @Test
  void aPassageThatTurnedOutToBePartOfAnotherIsntTakenInAgain() {
    take("bow,arrow,speed_fps,shot_id\nAsh,A1,150,x\nAsh,A1,150,y\n");
    List<Long> ids = bench.shots().stream().map(Shot::passageId).toList();
    bench.store().writing(t -> t.passages().join(ids.get(1), ids.get(0)));
    assertThat(take("bow,arrow,speed_fps,shot_id\nAsh,A1,150,y\n").already()).isEqualTo(1);
  }

  @Test
  void progressGoesUp() {
    List<Long> reached = new ArrayList<>();
    new IntakeCommands(bench.range(), bench.settings(), Clock.systemUTC())
        .take(
            new Brought(
                SheetKind.SHOTS,
                "paper.csv",
                "bow,arrow,speed_fps\nAsh,A1,150\nAsh,A1,151\n",
                Map.of(),
                HandUncertainty.USUAL,
                "import"),
            reached::add);
    assertThat(reached).containsExactly(0L, 500L);
  }
}
