package castwell.capture.view.plan;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** A turn that is to be shot again. */
public record AgainView(@JsonUnwrapped TurnView which, @Meaning("why, in words") String sentence) {}
