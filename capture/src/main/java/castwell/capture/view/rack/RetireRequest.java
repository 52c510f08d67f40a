package castwell.capture.view.rack;

import castwell.capture.view.Request;

/** Whether a thing of the rack is out of use. */
public record RetireRequest(boolean retired) implements Request {}
