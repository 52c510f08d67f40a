package castwell.capture.view.report.session;

/** A shot that doesn't count. */
public record AsideView(String bow, String arrow, String shotId, String reason) {}
