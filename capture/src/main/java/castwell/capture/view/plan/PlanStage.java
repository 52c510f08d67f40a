package castwell.capture.view.plan;

/** How far along a plan is. */
public enum PlanStage {
  READY,
  RUNNING,
  PAUSED,
  ENDED
}
