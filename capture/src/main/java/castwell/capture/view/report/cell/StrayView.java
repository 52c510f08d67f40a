package castwell.capture.view.report.cell;

import castwell.capture.view.Meaning;

/** A shot that strays from its cell, or is doubted. */
public record StrayView(
    String shotId,
    String session,
    String bow,
    String stateOn,
    String arrow,
    double studentized,
    @Meaning("adjusted for all that were looked at") double p,
    @Meaning("whether it is set aside, or only doubted") boolean setAside) {}
