package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.shot.Gate;
import castwell.capture.command.PlanCommand;
import castwell.capture.command.PlanCommands.Wanted;
import castwell.capture.command.Refused;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.plan.PlanProgress;
import castwell.capture.plan.PlanState;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Feed;
import castwell.capture.store.Rack;
import castwell.capture.store.Shot;
import castwell.capture.store.Tags;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A plan over real passages: it sets the tags, and shots take it on. No outside source. */
class PlanAtTheRangeTest {
  @TempDir Path folder;

  private RangeBench bench;
  private HandFedStation lane;
  private long micros = 1_000_000;
  private int edges;

  /** The lane's own time. */
  private final class LaneClock extends Clock {
    @Override
    public Instant instant() {
      return HandFedStation.STARTED.plus(micros, ChronoUnit.MICROS);
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }

  @BeforeEach
  void begin() {
    bench = RangeBench.in(folder, new LaneClock());
    for (String bow : new String[] {"ash", "yew"}) {
      bench.commands().bows().add(bow, Instant.EPOCH, 220, 0.70, "");
    }
    for (String arrow : new String[] {"one", "two", "three"}) {
      bench.commands().arrows().add(arrow, 0.030, Measures.none());
    }
    lane = plugged("lane");
  }

  private HandFedStation plugged(String station) {
    HandFedStation plugged = new HandFedStation(bench, station);
    plugged.plugIn(micros);
    plugged.identity(micros + 1000, 7);
    plugged.beat(micros + 2000, 7, edges);
    micros += 100_000;
    return plugged;
  }

  @AfterEach
  void end() {
    bench.close();
  }

  /** Each turn as "bow arrow". */
  private long start(String... turns) {
    long plan = make(turns);
    say(plan, PlanCommand.START);
    return plan;
  }

  private long make(String... turns) {
    List<Wanted> wanted =
        Arrays.stream(turns).map(t -> t.split(" ")).map(t -> new Wanted(t[0], t[1])).toList();
    return bench.commands().plans().make("lane", "the plan", wanted, "me");
  }

  private void say(long plan, PlanCommand word) {
    bench.commands().plans().say(plan, word, OptionalInt.empty(), "me");
    micros += 100_000;
  }

  /** Bow and arrow of a shot fired now. */
  private String shoot() {
    lane.arrow(micros, 7, edges + 1);
    edges += 4;
    pass();
    return tags(last());
  }

  /** The tail at gate B isn't seen. */
  private Shot misread() {
    for (int i = 0; i < 3; i++) {
      lane.edgeOfArrow(micros + 30_000, 7, edges + 1, i, micros);
    }
    edges += 4;
    pass();
    assertThat(last().counts()).isFalse();
    return last();
  }

  private void pass() {
    micros += 1_000_000;
    lane.passTimeUntil(micros);
  }

  private Shot last() {
    return bench.store().read(t -> t.shots().last("lane")).orElseThrow();
  }

  private static String tags(Shot shot) {
    return shot.bow().map(Rack.BowState::bow).orElse("-")
        + " "
        + shot.arrow().map(Rack.Arrow::name).orElse("-");
  }

  private PlanState planState(long plan) {
    return bench
        .store()
        .read(t -> PlanState.of(t.plans().turns(plan).size(), t.plans().events(plan)));
  }

  private List<Integer> doubted(long plan) {
    return bench.store().read(t -> t.plans().doubted(plan));
  }

  private void press(char how) {
    lane.say(micros, "K,7,1,%c,%d".formatted(how, 2 * micros));
    micros += 500_000;
  }

  @Test
  void everyShotGetsTheTagsOfItsTurnAndTakesTheNext() {
    long plan = start("ash one", "yew two", "yew two", "ash three");
    assertThat(shoot()).isEqualTo("ash one");
    assertThat(shoot()).isEqualTo("yew two");
    assertThat(planState(plan).turn()).hasValue(3);
    assertThat(shoot()).isEqualTo("yew two");
    assertThat(shoot()).isEqualTo("ash three");
    assertThat(planState(plan).progress()).isEqualTo(new PlanProgress.Ended(OptionalInt.empty()));
    assertThat(shoot()).isEqualTo("ash three"); // nobody else sets them
    assertThat(planState(plan).done()).isEqualTo(4);
  }

  @Test
  void aMisreadIsShotAgain() {
    long plan = start("ash one", "yew two");
    long before = bench.store().read(t -> t.feed().last());
    assertThat(tags(misread())).isEqualTo("ash one");
    assertThat(planState(plan).turn()).hasValue(1);
    List<Feed.Item> told = bench.store().read(t -> t.feed().after(before, 9));
    assertThat(told)
        .extracting(Feed.Item::kind)
        .containsExactly(Feed.Kind.SHOT, Feed.Kind.PLAN); // that it was missed is told
    assertThat(shoot()).isEqualTo("ash one");
    assertThat(planState(plan).turn()).hasValue(2);
  }

  @Test
  void aLateEdgeThatMendsAMisreadTakesTheNextTurn() {
    long plan = start("ash one", "yew two");
    long fired = micros;
    misread();
    lane.edgeOfArrow(micros, 7, edges - 3, 3, fired);
    pass();
    assertThat(last().counts()).isTrue();
    assertThat(planState(plan).turn()).hasValue(2);
    assertThat(shoot()).isEqualTo("yew two");
  }

  @Test
  void aMisreadThatIsBroughtBackTakesTheNextTurn() {
    long plan = start("ash one", "yew two");
    Shot misread = misread();
    bench.commands().decide(misread.shotId(), Decided.BROUGHT_BACK, "I saw it", "me");
    assertThat(planState(plan).turn()).hasValue(2);
    assertThat(shoot()).isEqualTo("yew two");
  }

  @Test
  void whatWasShotBeforeIsNoTurnWhenItIsBroughtBack() {
    bench.commands().tag("lane", Optional.of("ash"), Optional.of("one"), "me");
    Shot before = misread();
    long plan = start("ash one", "yew two");
    bench.commands().decide(before.shotId(), Decided.BROUGHT_BACK, "I saw it", "me");
    assertThat(planState(plan).turn()).hasValue(1);
  }

  @Test
  void arrowsThatAreHeardLateAndAllAtOnceGetTheirTurns() {
    start("ash one", "yew two", "ash three");
    long first = micros;
    micros += 20_000_000;
    lane.passTimeUntil(micros);
    for (int i = 0; i < 12; i++) {
      lane.edgeOfArrow(micros, 7, 1 + 4 * (i / 4), i % 4, first + 4_000_000L * (i / 4));
    }
    pass();
    assertThat(bench.shots("lane"))
        .extracting(PlanAtTheRangeTest::tags)
        .containsExactly("ash one", "yew two", "ash three");
  }

  @Test
  void arrowsOfTwoShootersAtOnceGetTheirTurns() {
    start("ash one", "yew two");
    lane.arrow(micros, 7, 1);
    lane.arrow(micros + 40_000, 7, 5);
    edges = 8;
    pass();
    assertThat(bench.shots("lane"))
        .extracting(PlanAtTheRangeTest::tags)
        .containsExactly("ash one", "yew two");
  }

  @Test
  void theKeyPausesAndResumingSetsTheTagsAgain() {
    long plan = start("ash one", "yew two");
    press('S');
    assertThat(planState(plan).progress()).isEqualTo(new PlanProgress.Paused(1, true, "key"));
    assertThat(shoot()).isEqualTo("ash two");
    assertThat(planState(plan).done()).isZero();
    say(plan, PlanCommand.RESUME);
    assertThat(shoot()).isEqualTo("ash one");
    assertThat(planState(plan).turn()).hasValue(2);
  }

  @Test
  void tagsChangedByHandPauseItAndTheSameTagsDoNot() {
    long plan = start("ash one", "yew two");
    bench.commands().tag("lane", Optional.of("ash"), Optional.of("one"), "page");
    assertThat(planState(plan).progress()).isInstanceOf(PlanProgress.Running.class);
    bench.commands().tag("lane", Optional.of("ash"), Optional.empty(), "page");
    assertThat(planState(plan).progress()).isEqualTo(new PlanProgress.Paused(1, true, "page"));
  }

  @Test
  void tagsOfADayBeforeDoNotPauseIt() {
    long plan = start("ash one", "yew two");
    bench
        .commands()
        .tag("lane", Instant.EPOCH.plusSeconds(1), Optional.of("yew"), Optional.empty(), "replay");
    assertThat(planState(plan).progress()).isInstanceOf(PlanProgress.Running.class);
  }

  @Test
  void skippingGoingBackAndRepeatingSetTheTags() {
    long plan = start("ash one", "yew two", "ash three");
    say(plan, PlanCommand.SKIP);
    assertThat(shoot()).isEqualTo("yew two");
    say(plan, PlanCommand.REPEAT);
    assertThat(shoot()).isEqualTo("yew two");
    say(plan, PlanCommand.BACK);
    say(plan, PlanCommand.BACK);
    assertThat(shoot()).isEqualTo("ash one");
    assertThat(shoot()).isEqualTo("ash three");
    assertThat(planState(plan).shots()).hasSize(3);
    assertThat(planState(plan).shots().get(2)).hasSize(2);
  }

  @Test
  void whilePausedShotsAndTagsAreFree() {
    long plan = start("ash one", "yew two");
    say(plan, PlanCommand.PAUSE);
    bench.commands().tag("lane", Optional.of("yew"), Optional.of("three"), "page");
    micros += 100_000;
    assertThat(shoot()).isEqualTo("yew three");
    say(plan, PlanCommand.END);
    say(plan, PlanCommand.RESUME); // ended by a slip
    assertThat(shoot()).isEqualTo("ash one");
    assertThat(planState(plan).turn()).hasValue(2);
  }

  @Test
  void aShotSetAsideOrRetaggedLaterIsToldUntilItsTurnIsRepeated() {
    long plan = start("ash one", "yew two", "ash three");
    shoot();
    String first = last().shotId();
    shoot();
    String second = last().shotId();
    assertThat(doubted(plan)).isEmpty();
    bench.commands().decide(first, Decided.SET_ASIDE, "plucked", "me");
    bench.commands().retag(second, Optional.of("yew"), Optional.of("three"), "me", "");
    assertThat(doubted(plan)).containsExactly(1, 2);
    assertThat(planState(plan).turn()).as("nothing moves by itself").hasValue(3);
    bench.commands().plans().say(plan, PlanCommand.REPEAT, OptionalInt.of(1), "me");
    micros += 100_000;
    assertThat(shoot()).isEqualTo("ash one");
    assertThat(doubted(plan)).containsExactly(2);
    bench.commands().decide(first, Decided.AS_JUDGED, "", "me");
    bench.commands().retag(second, Optional.of("yew"), Optional.of("two"), "me", "undone");
    assertThat(doubted(plan)).isEmpty();
    assertThat(planState(plan).turn()).hasValue(3);
  }

  @Test
  void aRetaggedMisreadIsNoTurns() {
    bench
        .commands()
        .arrows()
        .enter("three", 0.03, Measures.<ArrowMeasure>none().with(ArrowMeasure.LENGTH, 0.60));
    long plan = start("ash three", "yew two");
    shoot(); // 0.72 m
    assertThat(last().counts()).isFalse();
    bench.commands().retag(last().shotId(), Optional.of("ash"), Optional.of("one"), "me", "");
    assertThat(last().counts()).isTrue();
    assertThat(planState(plan).turn()).hasValue(1);
  }

  @Test
  void theDaemonGoesOnWhereItWas() {
    long plan = start("ash one", "yew two", "ash three");
    shoot();
    bench.close();
    bench = RangeBench.in(folder, new LaneClock());
    lane = plugged("lane");
    assertThat(planState(plan).turn()).hasValue(2);
    assertThat(shoot()).isEqualTo("yew two");
    assertThat(planState(plan).turn()).hasValue(3);
  }

  @Test
  void anotherStationsShotsAreNone() {
    long plan = start("ash one", "yew two");
    bench.commands().tag("other", Optional.of("ash"), Optional.of("one"), "me");
    HandFedStation other = plugged("other");
    other.arrow(micros, 7, 1);
    micros += 1_000_000;
    other.passTimeUntil(micros);
    assertThat(bench.shots("other")).hasSize(1);
    assertThat(planState(plan).turn()).hasValue(1);
  }

  @Test
  void aWaspIsNoTurn() {
    long plan = start("ash one", "yew two");
    lane.edge(micros + 500, 7, edges + 1, Gate.A, 'B', micros);
    lane.edge(micros + 900, 7, edges + 2, Gate.A, 'C', micros + 400);
    edges += 2;
    pass();
    assertThat(planState(plan).turn()).hasValue(1);
  }

  @Test
  void twoPlansDoNotRunAtOnce() {
    long first = start("ash one", "yew two");
    long second = make("yew three");
    assertThatThrownBy(() -> say(second, PlanCommand.START))
        .isInstanceOf(Refused.class)
        .hasMessage("refused.plan_going_on|the plan|lane");
    say(first, PlanCommand.END);
    say(second, PlanCommand.START);
    assertThatThrownBy(() -> say(first, PlanCommand.RESUME)).isInstanceOf(Refused.class);
    assertThat(shoot()).isEqualTo("yew three");
    say(first, PlanCommand.RESUME);
    assertThat(shoot()).isEqualTo("ash one");
  }

  @Test
  void whatDoesNotFitIsRefusedAndChangesNothing() {
    long plan = make("ash one", "yew two");
    refused(
        plan,
        PlanCommand.SKIP,
        "refused.plan_cant|the plan|refused.plan_not_begun|refused.word_skip");
    refused(
        plan,
        PlanCommand.REPEAT,
        "refused.plan_cant|the plan|refused.plan_not_begun|refused.word_repeat");
    say(plan, PlanCommand.START);
    refused(
        plan,
        PlanCommand.START,
        "refused.plan_cant|the plan|refused.plan_running|refused.word_start");
    refused(
        plan,
        PlanCommand.BACK,
        "refused.plan_cant|the plan|refused.plan_at_first_turn|refused.word_back");
    refused(plan, PlanCommand.REPEAT, "refused.plan_nothing_to_repeat|the plan");
    assertThatThrownBy(
            () ->
                bench
                    .commands()
                    .plans()
                    .say(plan, PlanCommand.SKIP, OptionalInt.of(2), "another phone"))
        .hasMessage("refused.plan_moved_on|the plan|2");
    shoot();
    shoot();
    refused(
        plan,
        PlanCommand.RESUME,
        "refused.plan_cant|the plan|refused.plan_at_end|refused.word_resume");
    refused(
        plan, PlanCommand.SKIP, "refused.plan_cant|the plan|refused.plan_ended|refused.word_skip");
    assertThatThrownBy(() -> say(99, PlanCommand.START)).hasMessage("refused.no_plan|99");
    assertThatThrownBy(() -> make("ash nobody")).isInstanceOf(Refused.class);
    assertThatThrownBy(() -> make()).isInstanceOf(Refused.class);
    Tags.Pair tags = bench.store().read(t -> t.tags().at("lane", new LaneClock().instant()));
    assertThat(tags).isEqualTo(bench.store().read(t -> t.plans().turns(plan).get(1).tags()));
  }

  private void refused(long plan, PlanCommand word, String sentence) {
    assertThatThrownBy(() -> say(plan, word)).isInstanceOf(Refused.class).hasMessage(sentence);
  }
}
