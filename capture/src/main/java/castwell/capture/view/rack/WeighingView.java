package castwell.capture.view.rack;

import castwell.capture.view.Meaning;
import java.time.Instant;

/** One weighing of an arrow. */
public record WeighingView(
    @Meaning("its number") long id,
    @Meaning(value = "what the scale said", unit = "grain") double massGr,
    @Meaning("when, UTC") Instant at,
    @Meaning("false when it was set aside") boolean counts,
    @Meaning("why it was set aside, empty where nobody said") String why) {}
