package castwell.capture.view.report.cell;

/** A shot that doesn't count, and why. */
public record AsideReason(String shotId, String reason) {}
