package castwell.capture.command;

import castwell.capture.announce.AnnouncedStore;
import castwell.capture.command.Refused.Why;
import castwell.capture.plan.PlanProgress;
import castwell.capture.plan.PlanState;
import castwell.capture.store.Feed;
import castwell.capture.store.Passages;
import castwell.capture.store.Plans.Event;
import castwell.capture.store.Plans.Happened;
import castwell.capture.store.Plans.Plan;
import castwell.capture.store.Plans.Turn;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Plans at the range: what a person does with them, and what shots do to them. While a plan is
 * under way, it sets the tags itself.
 */
public final class PlanCommands {
  private static final int MOST_TURNS = 2000;

  /**
   * The smallest step of time that is stored. The next turn's tags hold from this long after a
   * shot.
   */
  private static final Duration JUST_AFTER = Duration.ofMillis(1);

  private final AnnouncedStore store;
  private final Clock clock;

  /** One arrow from one bow, by their names. */
  public record Wanted(String bow, String arrow) {}

  PlanCommands(AnnouncedStore store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /**
   * Stores a plan. Nothing happens at the range until it is started.
   *
   * @return its id
   */
  public long make(String station, String name, List<Wanted> turns, String by) {
    String checked = Checks.name("refused.what_plan", name);
    if (turns.isEmpty() || turns.size() > MOST_TURNS) {
      throw Refused.of(Why.INVALID, "refused.plan_turns", MOST_TURNS, turns.size());
    }
    return store.write(
        t -> {
          long made =
              t.plans()
                  .add(
                      station,
                      checked,
                      turns.stream().map(turn -> tags(t, turn)).toList(),
                      clock.instant(),
                      by);
          t.feed().add(Feed.Kind.PLAN, station, OptionalLong.empty());
          return made;
        });
  }

  private static Tags.Pair tags(Transaction t, Wanted turn) {
    return new Tags.Pair(
        OptionalLong.of(BowCommands.bow(t, turn.bow()).id()),
        OptionalLong.of(ArrowCommands.arrow(t, turn.arrow()).id()));
  }

  /**
   * Carries out a command about a plan.
   *
   * @param turn the turn that the person takes to be the current one; for a repeat, the turn to be
   *     repeated, and if empty the one shot last
   */
  public void say(long planId, PlanCommand word, OptionalInt turn, String by) {
    store.writing(
        t -> {
          Plan plan =
              t.plans()
                  .byId(planId)
                  .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_plan", planId));
          int about = word.turn(plan.name(), planState(t, plan), turn);
          if (word.setsGoing()) {
            refuseTwo(t, plan);
          }
          Instant now = clock.instant();
          happen(t, plan, new Event(word.happened(), about, OptionalLong.empty(), now, by), now);
        });
  }

  private static void refuseTwo(Transaction t, Plan plan) {
    t.plans()
        .current(plan.station())
        .filter(other -> other.id() != plan.id() && planState(t, other).isGoingOn())
        .ifPresent(
            other -> {
              throw Refused.of(
                  Why.CONFLICT, "refused.plan_going_on", other.name(), other.station());
            });
  }

  /**
   * Takes note of a shot, within the transaction that records or changes it. When the shot was the
   * current turn's and counts, the plan moves on. Otherwise listeners may still have news of the
   * plan: that the turn was missed, or that a shot by which the plan moved on may want to be shot
   * again.
   */
  public static void shot(Transaction t, Passages.Row row) {
    Optional<Plan> current = t.plans().current(row.station());
    if (current.isEmpty()) {
      return;
    }
    Plan plan = current.get();
    PlanState planState = planState(t, plan);
    boolean isKnown =
        planState.shots().values().stream().anyMatch(shots -> shots.contains(row.id()));
    if (!isKnown
        && planState.progress() instanceof PlanProgress.Running running
        && isShotOf(t, turn(t, plan, running.turn()), running, row)) {
      OptionalLong shot = OptionalLong.of(row.id());
      Event event = new Event(Happened.SHOT, running.turn(), shot, row.firedMs(), "a shot");
      happen(t, plan, event, row.firedMs().plus(JUST_AFTER));
    } else if (isKnown || planState.isGoingOn()) {
      t.feed().add(Feed.Kind.PLAN, plan.station(), OptionalLong.empty());
    }
  }

  /**
   * Whether a shot was tagged as the plan had it when it was shot, and was never tagged otherwise.
   */
  private static boolean isShotOf(
      Transaction t, Turn turn, PlanProgress.Running running, Passages.Row row) {
    return !row.isByHand()
        && !row.firedMs().isBefore(running.since())
        && t.tags().ofShot(row.id()).filter(turn.tags()::equals).isPresent()
        && t.tags().history(row.id()).size() == 1
        && t.shots().byPassage(row.id()).filter(shot -> shot.counts()).isPresent();
  }

  /**
   * Pauses a plan that is under way, within the transaction in which somebody changes a station's
   * tags.
   */
  static void tagsChanged(Transaction t, String station, Instant from, String by) {
    t.plans()
        .current(station)
        .ifPresent(
            plan -> {
              if (planState(t, plan).progress() instanceof PlanProgress.Running running
                  && !from.isBefore(running.since())) {
                OptionalLong none = OptionalLong.empty();
                happen(
                    t,
                    plan,
                    new Event(Happened.TAGS_CHANGED, running.turn(), none, from, by),
                    from);
              }
            });
  }

  /**
   * @param tagsFrom from when on the tags of the turn that is current then hold
   */
  private static void happen(Transaction t, Plan plan, Event event, Instant tagsFrom) {
    t.plans().happened(plan.id(), event);
    if (planState(t, plan).progress() instanceof PlanProgress.Running running) {
      Tags.Pair tags = turn(t, plan, running.turn()).tags();
      if (!t.tags().at(plan.station(), tagsFrom).equals(tags)) {
        t.tags().change(plan.station(), tagsFrom, tags, "plan");
        t.feed().add(Feed.Kind.TAGS, plan.station(), OptionalLong.empty());
      }
    }
    t.feed().add(Feed.Kind.PLAN, plan.station(), OptionalLong.empty());
  }

  private static Turn turn(Transaction t, Plan plan, int number) {
    return t.plans().turns(plan.id()).get(number - 1);
  }

  private static PlanState planState(Transaction t, Plan plan) {
    return PlanState.of(t.plans().turns(plan.id()).size(), t.plans().events(plan.id()));
  }
}
