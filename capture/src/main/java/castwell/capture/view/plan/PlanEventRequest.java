package castwell.capture.view.plan;

import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.OptionalInt;

/** What a person wants to happen to a plan. */
public record PlanEventRequest(
    @JsonProperty("do") String word, @Meaning("where one is gone to") OptionalInt turn)
    implements Request {}
