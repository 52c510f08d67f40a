package castwell.capture.view.data;

import castwell.capture.view.Request;

/** A request without any fields. */
public record NoFields() implements Request {}
