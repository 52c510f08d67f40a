package castwell.capture.view.health;

/** How everything is, or one station. */
public sealed interface HealthTold permits WholeHealth, StationHealth {}
