package castwell.capture.view.plan;

import castwell.capture.view.Request;
import java.util.List;
import java.util.Optional;

/** A plan to make, from turns or from the design that they come from. */
public record PlanRequest(
    String station,
    Optional<String> name,
    Optional<List<TurnRequest>> turns,
    Optional<DesignRequest> from)
    implements Request {}
