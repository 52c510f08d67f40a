package castwell.capture.view.broker;

import castwell.capture.view.AtLeast;
import castwell.capture.view.Meaning;
import castwell.capture.view.shot.ShotView;
import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** A shot that is new, or of which something changed. */
public record ShotTold(
    @AtLeast(1)
        @Meaning(
            "number of the feed's item that this tells of: it rises, and comes again when the message does")
        long event,
    @JsonUnwrapped ShotView shot) {}
