package castwell.capture.view.plan;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.OptionalDouble;

/** A design that was shown, as it is sent to become a plan: a {@link DesignRequest}. */
public record DesignAgain(
    String bow,
    List<String> control,
    double changeFps,
    @JsonInclude(JsonInclude.Include.NON_ABSENT) OptionalDouble sdFps,
    List<String> arrow,
    long seed) {}
