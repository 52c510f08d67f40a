package castwell.capture.view.data;

import castwell.capture.view.Request;

/** To be let in. */
public record EnterRequest(String key) implements Request {}
