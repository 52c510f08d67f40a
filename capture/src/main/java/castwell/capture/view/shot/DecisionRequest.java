package castwell.capture.view.shot;

import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Optional;

/** Whether a shot counts: null leaves it to the rules. */
public record DecisionRequest(
    @JsonProperty(required = true) Optional<Boolean> counts, Optional<String> reason)
    implements Request {}
