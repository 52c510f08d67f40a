package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import java.util.List;

/** What fits a shot clearly better than its tags. */
public record MisfitView(
    @Meaning("the same in words") String sentence, @Meaning("the best first") List<FitView> fits) {}
