package castwell.capture.view.report.plan;

/** One turn of a design. */
public record PlannedTurn(int turn, int block, String bow, String arrow) {}
