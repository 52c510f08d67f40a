package castwell.capture.view.range;

import castwell.capture.view.Meaning;
import castwell.capture.view.shot.ShotRead;
import java.util.List;

/** The arrows shot before fetching them. */
public record EndView(
    @Meaning("in its session") int number,
    @Meaning("the first first") List<ShotRead> shots,
    List<GroupView> groups) {}
