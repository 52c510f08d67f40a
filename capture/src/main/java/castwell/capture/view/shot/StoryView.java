package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import java.util.List;
import java.util.OptionalDouble;

/** How a shot's edges were read: which of them are the arrow's, and how sure that is. */
public record StoryView(
    @Meaning("the first first") List<EdgePartView> edges,
    @Meaning("what to know of it beside the speed") List<String> notes,
    @Meaning("how many times as likely the arrow is as the next best story; none without an arrow")
        OptionalDouble timesAsLikely) {}
