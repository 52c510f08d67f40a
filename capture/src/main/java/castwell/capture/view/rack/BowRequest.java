package castwell.capture.view.rack;

import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** A new bow. */
public record BowRequest(String name, @JsonUnwrapped StateRequest state) implements Request {}
