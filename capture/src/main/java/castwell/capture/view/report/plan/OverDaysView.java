package castwell.capture.view.report.plan;

import castwell.capture.view.Meaning;
import java.util.Optional;

/** What it takes where before and after lie on different days. */
public record OverDaysView(
    @Meaning("the fewest sessions that do; null where eight before and after won't")
        Optional<DaysDesignView> cheapest,
    @Meaning("the one that was asked for") Optional<DaysDesignView> asked) {}
