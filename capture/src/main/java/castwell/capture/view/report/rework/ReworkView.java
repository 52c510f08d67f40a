package castwell.capture.view.report.rework;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.OptionalDouble;

/** What a rework changed. */
public record ReworkView(
    @JsonUnwrapped ChangeView change,
    OptionalDouble bowChangeFps,
    OptionalDouble controlChangeFps,
    OptionalDouble controlsDisagreeByFps,
    String conclusion,
    String whatMoved) {}
