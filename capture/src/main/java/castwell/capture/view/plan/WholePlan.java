package castwell.capture.view.plan;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Optional;

/** A plan with every turn. */
public record WholePlan(
    @JsonUnwrapped PlanView plan,
    List<OrderedTurn> order,
    @JsonInclude(JsonInclude.Include.NON_ABSENT)
        @Meaning("what a plan that was designed says of itself, when it is made")
        Optional<List<String>> sentences) {}
