package castwell.capture.view.data;

import castwell.capture.view.Request;

/** A request that says nothing. */
public record NoFields() implements Request {}
