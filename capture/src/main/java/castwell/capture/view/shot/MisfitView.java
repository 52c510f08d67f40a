package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import java.util.List;

/** The bows and arrows that fit a shot clearly better than its tags. */
public record MisfitView(
    @Meaning("the same in words") String sentence, @Meaning("the best first") List<FitView> fits) {}
