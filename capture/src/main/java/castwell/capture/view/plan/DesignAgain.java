package castwell.capture.view.plan;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A design that was shown, as it is sent to become a plan: a {@link DesignRequest}. */
public record DesignAgain(
    String bow,
    List<String> control,
    double changeFps,
    @JsonInclude(JsonInclude.Include.NON_ABSENT) OptionalDouble sdFps,
    List<String> arrow,
    @JsonInclude(JsonInclude.Include.NON_ABSENT) OptionalInt sessions,
    @JsonInclude(JsonInclude.Include.NON_ABSENT) OptionalInt shots,
    long seed) {}
