package castwell.capture.view.report.cell;

import castwell.capture.view.Meaning;

/** A shot that strays from its cell, or is doubted. */
public record StrayView(
    String shotId,
    String session,
    String bow,
    String stateOn,
    String arrow,
    @Meaning("at the bow where that is known, else at the gates") double speedFps,
    @Meaning("how likely it was plucked or measured wrongly, from 0 to 1") double chance,
    @Meaning("whether it is set aside, or only doubted") boolean setAside) {}
