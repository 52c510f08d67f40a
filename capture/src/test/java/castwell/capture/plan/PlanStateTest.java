package castwell.capture.plan;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.capture.store.Plans.Event;
import castwell.capture.store.Plans.Happened;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Where a plan stands after what happened to it. The project's own rules, no source. */
class PlanStateTest {
  private final List<Event> events = new ArrayList<>();
  private long passage = 100;

  private PlanStateTest then(Happened happened, int turn) {
    OptionalLong shot =
        happened == Happened.SHOT ? OptionalLong.of(passage++) : OptionalLong.empty();
    events.add(new Event(happened, turn, shot, Instant.ofEpochSecond(events.size()), "test"));
    return this;
  }

  private PlanState of(int turns) {
    return PlanState.of(turns, events);
  }

  private PlanStateTest started() {
    return then(Happened.START, 1);
  }

  @Test
  void nothingHasHappenedToAPlanThatIsMade() {
    assertThat(of(3).progress()).isEqualTo(new PlanProgress.Ready());
    assertThat(of(3).isGoingOn()).isFalse();
    assertThat(of(3).done()).isZero();
  }

  @Test
  void eachShotTakesTheNextTurnAndTheLastEndsIt() {
    started().then(Happened.SHOT, 1);
    assertThat(of(2).progress()).isEqualTo(new PlanProgress.Running(2, Instant.ofEpochSecond(1)));
    then(Happened.SHOT, 2);
    assertThat(of(2).progress()).isEqualTo(new PlanProgress.Ended(OptionalInt.empty()));
    assertThat(of(2).shots())
        .containsEntry(1, List.of(100L))
        .containsEntry(2, List.of(101L))
        .hasSize(2);
  }

  @Test
  void aSkippedTurnIsLeftOutUntilSomebodyGoesBack() {
    started().then(Happened.SKIP, 1).then(Happened.SHOT, 2);
    assertThat(of(3).turn()).hasValue(3);
    assertThat(of(3).skipped()).containsExactly(1);
    then(Happened.BACK, 2).then(Happened.BACK, 1).then(Happened.SHOT, 1);
    assertThat(of(3).skipped()).isEmpty();
    assertThat(of(3).turn()).hasValue(3); // the second was shot before
  }

  @Test
  void aSkipThatIsTakenBackIsNone() {
    started().then(Happened.SHOT, 1).then(Happened.SKIP, 2).then(Happened.BACK, 2);
    assertThat(of(4).skipped()).isEmpty();
    then(Happened.REPEAT, 1).then(Happened.SKIP, 1);
    assertThat(of(4).turn()).hasValue(2);
  }

  @Test
  void aRepeatedTurnHasTwoShotsAndThenItGoesOnWhereItWas() {
    started().then(Happened.SHOT, 1).then(Happened.SHOT, 2).then(Happened.REPEAT, 2);
    assertThat(of(4).turn()).hasValue(2);
    assertThat(of(4).after(2)).hasValue(3);
    then(Happened.SHOT, 2);
    assertThat(of(4).turn()).hasValue(3);
    assertThat(of(4).shots().get(2)).containsExactly(101L, 102L);
    assertThat(of(4).done()).isEqualTo(2);
  }

  @Test
  void aRepeatThatIsSkippedLeavesItsTurnShot() {
    started().then(Happened.SHOT, 1).then(Happened.REPEAT, 1).then(Happened.SKIP, 1);
    assertThat(of(2).turn()).hasValue(2);
    assertThat(of(2).skipped()).isEmpty();
    assertThat(of(2).done()).isEqualTo(1);
  }

  @Test
  void whatIsPausedOrEndedGoesOnAtItsTurn() {
    started().then(Happened.SHOT, 1).then(Happened.TAGS_CHANGED, 2);
    assertThat(of(3).progress()).isEqualTo(new PlanProgress.Paused(2, true, "test"));
    then(Happened.RESUME, 2).then(Happened.PAUSE, 2);
    assertThat(of(3).progress()).isEqualTo(new PlanProgress.Paused(2, false, "test"));
    then(Happened.END, 2);
    assertThat(of(3).progress()).isEqualTo(new PlanProgress.Ended(OptionalInt.of(2)));
    then(Happened.RESUME, 2);
    assertThat(of(3).turn()).hasValue(2);
    assertThat(of(3).isGoingOn()).isTrue();
  }

  @Test
  void theLastShotOfAPlanThatIsOverCanBeRepeated() {
    started().then(Happened.SHOT, 1).then(Happened.REPEAT, 1);
    assertThat(of(1).turn()).hasValue(1);
    then(Happened.SHOT, 1);
    assertThat(of(1).progress()).isEqualTo(new PlanProgress.Ended(OptionalInt.empty()));
  }

  /** However people walk through a plan, every turn is shot or skipped once when it ends. */
  @Test
  void noTurnIsForgottenHoweverOneWalks() {
    long seed = Seed.of(PlanStateTest.class);
    Random random = new Random(seed);
    for (int walk = 0; walk < 300; walk++) {
      events.clear();
      int turns = 1 + random.nextInt(12);
      started();
      Set<Integer> shot = new HashSet<>();
      PlanState planState = of(turns);
      for (int step = 0; planState.isGoingOn() && step < 400; step++) {
        int at = planState.turn().orElseThrow();
        // Where one is, all turns before are settled.
        for (int turn = 1; turn < at; turn++) {
          assertThat(shot.contains(turn) || planState.skipped().contains(turn))
              .as("turn %d, seed %d", turn, seed)
              .isTrue();
        }
        switch (random.nextInt(5)) {
          case 0 -> then(Happened.SKIP, at);
          case 1 -> then(Happened.BACK, Math.max(1, at - 1));
          case 2 -> then(Happened.PAUSE, at).then(Happened.RESUME, at);
          default -> {
            then(Happened.SHOT, at);
            shot.add(at);
          }
        }
        planState = of(turns);
        assertThat(planState.shots().keySet()).as("seed %d", seed).isEqualTo(shot);
        assertThat(planState.skipped()).as("seed %d", seed).noneMatch(shot::contains);
      }
      assertThat(planState.done() + planState.skipped().size())
          .as("seed %d", seed)
          .isEqualTo(turns);
    }
  }
}
