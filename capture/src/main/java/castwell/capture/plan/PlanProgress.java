package castwell.capture.plan;

import java.time.Instant;
import java.util.OptionalInt;

/** How a plan goes on. */
public sealed interface PlanProgress {

  /** Made, and not begun. */
  record Ready() implements PlanProgress {}

  /**
   * @param turn to be shot next
   * @param since when; shots fired before belong to what was before
   */
  record Running(int turn, Instant since) implements PlanProgress {}

  /**
   * Shots are kept as ever, but don't belong to the plan.
   *
   * @param turn to be shot when it goes on
   * @param tagsChanged whether it paused because somebody changed the tags
   * @param by who paused it
   */
  record Paused(int turn, boolean tagsChanged, String by) implements PlanProgress {}

  /**
   * @param turn that was to be shot next when somebody ended it; empty when there was none left
   */
  record Ended(OptionalInt turn) implements PlanProgress {}
}
