package castwell.capture.plan;

import java.time.Instant;
import java.util.OptionalInt;

/** How far along a plan is. */
public sealed interface PlanProgress {

  /** The plan was made, and not begun. */
  record Ready() implements PlanProgress {}

  /**
   * The plan is under way.
   *
   * @param turn the turn to be shot next
   * @param since from when on shots belong to it; those fired before don't
   */
  record Running(int turn, Instant since) implements PlanProgress {}

  /**
   * The plan is paused: shots are stored as ever, but don't belong to it.
   *
   * @param turn the turn to be shot when it is resumed
   * @param tagsChanged whether it paused because somebody changed the tags
   * @param by who paused it
   */
  record Paused(int turn, boolean tagsChanged, String by) implements PlanProgress {}

  /**
   * The plan has ended.
   *
   * @param turn the turn that was next when somebody ended it; empty when there was none left
   */
  record Ended(OptionalInt turn) implements PlanProgress {}
}
