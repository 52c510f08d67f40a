package castwell.capture.view.plan;

/** How a plan goes on. */
public enum PlanStage {
  READY,
  RUNNING,
  PAUSED,
  ENDED
}
