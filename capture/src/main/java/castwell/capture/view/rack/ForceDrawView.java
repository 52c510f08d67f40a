package castwell.capture.view.rack;

import castwell.capture.view.Meaning;
import java.util.List;

/** A bow's force-draw curve in one state, as measured last. */
public record ForceDrawView(
    @Meaning("the bow's name") String bow,
    @Meaning("the state that was drawn") String stateOn,
    List<ForceDrawPointView> points) {}
