package castwell.capture.view.plan;

import castwell.capture.view.AtLeast;

/** One arrow from one bow. */
public record TurnView(@AtLeast(1) int turn, String bow, String arrow) {}
