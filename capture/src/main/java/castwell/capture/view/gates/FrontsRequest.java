package castwell.capture.view.gates;

import castwell.capture.view.Meaning;
import castwell.capture.view.Request;

/** What a person decides of a session's fronts and tails. */
public record FrontsRequest(
    @Meaning("whether its tails were slowed, and are to be corrected to its fronts")
        boolean frontsTrusted)
    implements Request {}
