package castwell.capture.view.plan;

import castwell.capture.view.Request;

/** One arrow from one bow. */
public record TurnRequest(String bow, String arrow) implements Request {}
