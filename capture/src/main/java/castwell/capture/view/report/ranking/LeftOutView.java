package castwell.capture.view.report.ranking;

/** A bow that can't be ranked, and why. */
public record LeftOutView(String bow, String reason) {}
