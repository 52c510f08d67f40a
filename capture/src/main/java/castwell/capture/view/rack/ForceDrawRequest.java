package castwell.capture.view.rack;

import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import java.util.List;
import java.util.Optional;

/** A bow's force-draw curve. */
public record ForceDrawRequest(
    @Meaning("the state that was drawn; now otherwise") Optional<String> stateOn,
    List<PointRequest> points)
    implements Request {}
