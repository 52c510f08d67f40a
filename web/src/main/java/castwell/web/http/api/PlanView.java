package castwell.web.http.api;

import castwell.capture.plan.PlanProgress;
import castwell.capture.plan.PlanState;
import castwell.capture.store.Plans.Event;
import castwell.capture.store.Plans.Plan;
import castwell.capture.store.Plans.Turn;
import castwell.capture.store.Shot;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.web.text.Speech;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/** Plans as JSON objects: where one stands, and what is to be picked up. */
public final class PlanView {
  private static final Speech SPEECH = Speech.TRADE;

  private final Transaction t;
  private final Plan plan;
  private final List<Turn> turns;
  private final PlanState planState;
  private final Instant since;

  private PlanView(Transaction t, Plan plan) {
    this.t = t;
    this.plan = plan;
    this.turns = t.plans().turns(plan.id());
    List<Event> events = t.plans().events(plan.id());
    this.planState = PlanState.of(turns.size(), events);
    this.since = events.isEmpty() ? plan.made() : events.get(events.size() - 1).at();
  }

  /** A station's plan, for whoever publishes it; empty where none was begun. */
  public static Function<String, Optional<Map<String, Object>>> of(Store store) {
    return station -> store.read(t -> current(t, station));
  }

  public static Optional<Map<String, Object>> current(Transaction t, String station) {
    return t.plans().current(station).map(plan -> of(t, plan));
  }

  static Map<String, Object> of(Transaction t, Plan plan) {
    return new PlanView(t, plan).view();
  }

  /** With every turn, and what became of it. */
  static Map<String, Object> whole(Transaction t, Plan plan) {
    PlanView whole = new PlanView(t, plan);
    Map<String, Object> view = whole.view();
    view.put("order", whole.turns.stream().map(whole::ordered).toList());
    return view;
  }

  private Map<String, Object> view() {
    OptionalInt turn = planState.turn();
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("plan", plan.id());
    view.put("station", plan.station());
    view.put("name", plan.name());
    view.put("made_at", plan.made().toString());
    view.put("made_by", plan.by());
    view.put("state", planState.progress().getClass().getSimpleName().toLowerCase(Locale.ROOT));
    view.put("since", since.toString());
    view.put("turns", turns.size());
    view.put("done", planState.done());
    view.put("skipped", planState.skipped().size());
    view.put("now", turn(turn));
    view.put("then", turn(turn.isPresent() ? planState.after(turn.getAsInt()) : turn));
    view.put("last_shot", turn(planState.lastShot()));
    view.put("missed", isMissed());
    view.put("sentence", sentence());
    view.put("shoot_again", t.plans().doubted(plan.id()).stream().map(this::again).toList());
    return view;
  }

  private Map<String, Object> turn(OptionalInt number) {
    return number.isPresent() ? named(turns.get(number.getAsInt() - 1)) : null;
  }

  private static Map<String, Object> named(Turn turn) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("turn", turn.number());
    view.put("bow", turn.bow().name());
    view.put("arrow", turn.arrow().name());
    return view;
  }

  private Map<String, Object> ordered(Turn turn) {
    Map<String, Object> view = named(turn);
    boolean isShot = planState.shots().containsKey(turn.number());
    boolean isSkipped = planState.skipped().contains(turn.number());
    view.put("became", isShot ? "shot" : isSkipped ? "skipped" : null);
    return view;
  }

  private Map<String, Object> again(int number) {
    Turn turn = turns.get(number - 1);
    Map<String, Object> view = named(turn);
    view.put("sentence", SPEECH.say("plan.again", number, turn.arrow().name(), turn.bow().name()));
    return view;
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
