package castwell.capture.view.rack;

import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** A new arrow. */
public record ArrowRequest(String name, @JsonUnwrapped ArrowEntry entry) implements Request {}
