package castwell.capture.view.plan;

import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import java.util.List;
import java.util.OptionalDouble;

/** The choices by which a plan is designed. */
public record DesignRequest(
    @Meaning("the one to be reworked") String bow,
    @Meaning("bows to which nothing is done") List<String> control,
    @Meaning(value = "that should be seen", unit = "foot per second") OptionalDouble changeFps,
    @Meaning(value = "or that, as a share of the speed", unit = "percent")
        OptionalDouble changePercent,
    @Meaning("how surely, between 0.05 and 1") OptionalDouble power,
    @Meaning(value = "one shot's scatter", unit = "foot per second") OptionalDouble sdFps,
    @Meaning("chosen where there are none") List<String> arrow,
    @Meaning("before the rework, and as many after; over one where there is none")
        OptionalDouble sessions,
    @Meaning("of each arrow from each bow in a session") OptionalDouble shots,
    @Meaning("of the order") OptionalDouble seed)
    implements Request {}
