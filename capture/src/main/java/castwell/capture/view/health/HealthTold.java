package castwell.capture.view.health;

/** The health of everything, or of one station. */
public sealed interface HealthTold permits WholeHealth, StationHealth {}
