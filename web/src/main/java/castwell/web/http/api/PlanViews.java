package castwell.web.http.api;

import castwell.capture.plan.PlanProgress;
import castwell.capture.plan.PlanState;
import castwell.capture.store.Plans.Event;
import castwell.capture.store.Plans.Plan;
import castwell.capture.store.Plans.Turn;
import castwell.capture.store.Shot;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.capture.view.plan.AgainView;
import castwell.capture.view.plan.Became;
import castwell.capture.view.plan.OrderedTurn;
import castwell.capture.view.plan.PlanStage;
import castwell.capture.view.plan.PlanView;
import castwell.capture.view.plan.TurnView;
import castwell.capture.view.plan.WholePlan;
import castwell.web.text.Speech;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/** Plans as they leave the program: where one stands, and what is to be picked up. */
public final class PlanViews {
  private static final Speech SPEECH = Speech.TRADE;

  private final Transaction t;
  private final Plan plan;
  private final List<Turn> turns;
  private final PlanState planState;
  private final Instant since;

  private PlanViews(Transaction t, Plan plan) {
    this.t = t;
    this.plan = plan;
    this.turns = t.plans().turns(plan.id());
    List<Event> events = t.plans().events(plan.id());
    this.planState = PlanState.of(turns.size(), events);
    this.since = events.isEmpty() ? plan.made() : events.get(events.size() - 1).at();
  }

  /** A station's plan, for whoever publishes it; empty where none was begun. */
  public static Function<String, Optional<PlanView>> of(Store store) {
    return station -> store.read(t -> current(t, station));
  }

  public static Optional<PlanView> current(Transaction t, String station) {
    return t.plans().current(station).map(plan -> of(t, plan));
  }

  public static PlanView of(Transaction t, Plan plan) {
    return new PlanViews(t, plan).view();
  }

  /**
   * With every turn, and what became of it.
   *
   * @param sentences what a plan that was just designed says of itself
   */
  static WholePlan whole(Transaction t, Plan plan, Optional<List<String>> sentences) {
    PlanViews whole = new PlanViews(t, plan);
    return new WholePlan(
        whole.view(), whole.turns.stream().map(whole::ordered).toList(), sentences);
  }

  private PlanView view() {
    OptionalInt turn = planState.turn();
    return new PlanView(
        plan.id(),
        plan.station(),
        plan.name(),
        plan.made(),
        plan.by(),
        stage(),
        since,
        turns.size(),
        planState.done(),
        planState.skipped().size(),
        turn(turn),
        turn(turn.isPresent() ? planState.after(turn.getAsInt()) : turn),
        turn(planState.lastShot()),
        isMissed(),
        sentence(),
        t.plans().doubted(plan.id()).stream().map(this::again).toList());
  }

  private PlanStage stage() {
    if (planState.progress() instanceof PlanProgress.Running) {
      return PlanStage.RUNNING;
    } else if (planState.progress() instanceof PlanProgress.Paused) {
      return PlanStage.PAUSED;
    }
    return planState.progress() instanceof PlanProgress.Ended ? PlanStage.ENDED : PlanStage.READY;
  }

  private Optional<TurnView> turn(OptionalInt number) {
    return number.isPresent()
        ? Optional.of(named(turns.get(number.getAsInt() - 1)))
        : Optional.empty();
  }

  private static TurnView named(Turn turn) {
    return new TurnView(turn.number(), turn.bow().name(), turn.arrow().name());
  }

  private OrderedTurn ordered(Turn turn) {
    boolean isShot = planState.shots().containsKey(turn.number());
    boolean isSkipped = planState.skipped().contains(turn.number());
    return new OrderedTurn(
        named(turn),
        isShot
            ? Optional.of(Became.SHOT)
            : isSkipped ? Optional.of(Became.SKIPPED) : Optional.empty());
  }

  private AgainView again(int number) {
    Turn turn = turns.get(number - 1);
    return new AgainView(
        named(turn), SPEECH.say("plan.again", number, turn.arrow().name(), turn.bow().name()));
  }

  private String sentence() {
    if (planState.progress() instanceof PlanProgress.Running running) {
      return isMissed()
          ? SPEECH.say("plan.shoot_again")
          : SPEECH.say(
              "plan.shoot",
              turns.get(running.turn() - 1).arrow().name(),
              turns.get(running.turn() - 1).bow().name());
    }
    if (planState.progress() instanceof PlanProgress.Paused paused) {
      return paused.tagsChanged()
          ? SPEECH.say("plan.paused_by", who(paused.by()))
          : SPEECH.say("plan.paused");
    }
    return planState.progress() instanceof PlanProgress.Ended
        ? ended()
        : SPEECH.say("plan.not_begun");
  }

  /** A passage that doesn't count went through since the turn began. */
  private boolean isMissed() {
    return planState.progress() instanceof PlanProgress.Running running
        && t.shots()
            .last(plan.station())
            .filter(shot -> !shot.fired().isBefore(running.since()))
            .filter(shot -> !shot.counts())
            .filter(shot -> !isShotOfPlan(shot))
            .isPresent();
  }

  private boolean isShotOfPlan(Shot shot) {
    return planState.shots().values().stream().anyMatch(ids -> ids.contains(shot.passageId()));
  }

  private static String who(String by) {
    return by.equals("key")
        ? SPEECH.say("plan.by_key")
        : by.equals("page") ? SPEECH.say("plan.by_hand") : by;
  }

  private String ended() {
    int left = turns.size() - planState.done() - planState.skipped().size();
    int skipped = planState.skipped().size();
    return left > 0
        ? SPEECH.say("plan.over_left", planState.done(), turns.size(), skipped, left)
        : SPEECH.say("plan.over", planState.done(), turns.size(), skipped);
  }
}
