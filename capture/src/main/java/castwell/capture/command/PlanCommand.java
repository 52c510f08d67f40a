package castwell.capture.command;

import castwell.analysis.wording.Phrase;
import castwell.capture.command.Refused.Why;
import castwell.capture.plan.PlanProgress;
import castwell.capture.plan.PlanState;
import castwell.capture.store.Plans.Happened;
import java.util.Locale;
import java.util.OptionalInt;

/** What a person can do with a plan, and when. */
public enum PlanCommand {
  START(Happened.START, true),
  /** Leaves the current turn out. */
  SKIP(Happened.SKIP, false),
  /** Repeats the turn that was shot last, or another one that was shot. */
  REPEAT(Happened.REPEAT, true),
  /** Goes back to the turn before, whatever became of it. */
  BACK(Happened.BACK, true),
  PAUSE(Happened.PAUSE, false),
  RESUME(Happened.RESUME, true),
  END(Happened.END, false);

  private final Happened happened;
  private final boolean setsGoing;

  PlanCommand(Happened happened, boolean setsGoing) {
    this.happened = happened;
    this.setsGoing = setsGoing;
  }

  Happened happened() {
    return happened;
  }

  /** Whether the plan is under way afterwards. */
  boolean setsGoing() {
    return setsGoing;
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * The turn that the command is about.
   *
   * @param meant the turn that the person has in mind, if any
   * @throws Refused when the command isn't possible in the plan's state
   */
  int turn(String plan, PlanState planState, OptionalInt meant) {
    PlanProgress progress = planState.progress();
    if (!fits(progress)) {
      throw cant(plan, told(progress));
    }
    if (this == REPEAT) {
      return repeated(plan, planState, meant);
    }
    refuseAnother(plan, planState, meant);
    int current = planState.turn().orElse(planState.turns() + 1);
    int about = this == BACK ? current - 1 : current;
    if (about < 1 || about > planState.turns()) {
      throw cant(plan, about < 1 ? "refused.plan_at_first_turn" : "refused.plan_at_end");
    }
    return about;
  }

  private boolean fits(PlanProgress progress) {
    boolean ready = progress instanceof PlanProgress.Ready;
    return switch (this) {
      case START -> ready;
      case SKIP, PAUSE -> progress instanceof PlanProgress.Running;
      case REPEAT, BACK -> !ready;
      case RESUME ->
          progress instanceof PlanProgress.Paused || progress instanceof PlanProgress.Ended;
      case END ->
          progress instanceof PlanProgress.Running || progress instanceof PlanProgress.Paused;
    };
  }

  private Refused cant(String plan, String state) {
    return Refused.of(
        Why.CONFLICT,
        "refused.plan_cant",
        plan,
        Phrase.of(state),
        Phrase.of("refused.word_" + word()));
  }

  private static String told(PlanProgress progress) {
    if (progress instanceof PlanProgress.Ready) {
      return "refused.plan_not_begun";
    }
    if (progress instanceof PlanProgress.Running) {
      return "refused.plan_running";
    }
    return progress instanceof PlanProgress.Paused ? "refused.plan_paused" : "refused.plan_ended";
  }

  private static int repeated(String plan, PlanState planState, OptionalInt meant) {
    OptionalInt turn = meant.isPresent() ? meant : planState.lastShot();
    if (turn.isEmpty() || !planState.shots().containsKey(turn.getAsInt())) {
      throw Refused.of(Why.CONFLICT, "refused.plan_nothing_to_repeat", plan);
    }
    return turn.getAsInt();
  }

  /**
   * Refuses a command meant for another turn than the current one: a shot or another phone may have
   * been faster.
   */
  private static void refuseAnother(String plan, PlanState planState, OptionalInt meant) {
    if (meant.isPresent() && !meant.equals(planState.turn())) {
      throw Refused.of(Why.CONFLICT, "refused.plan_moved_on", plan, meant.getAsInt());
    }
  }
}
