package castwell.capture.view.data;

import castwell.capture.view.Request;

/** A request to be let in by the key. */
public record EnterRequest(String key) implements Request {}
