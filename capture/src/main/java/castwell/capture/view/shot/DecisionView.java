package castwell.capture.view.shot;

import castwell.capture.store.Decisions.Decided;
import castwell.capture.view.Meaning;
import java.time.Instant;

/** A decision that a person once took on whether a shot counts. */
public record DecisionView(
    Decided decided,
    @Meaning("why, may be empty") String reason,
    @Meaning("when, UTC") Instant at,
    @Meaning("who decided it") String by) {}
