package castwell.capture.view.report.cell;

import castwell.capture.view.Meaning;
import java.util.List;
import java.util.Optional;

/**
 * The shots that the tests for one set alone would call outliers in a cell. These tests set nothing
 * aside.
 */
public record AloneView(
    @Meaning("by Grubbs' test") List<String> grubbs,
    @Meaning("by the generalized extreme Studentized deviate test") List<String> generalizedEsd,
    @Meaning("by the modified z score") List<String> modifiedZ,
    @Meaning("whether Dixon's test finds one; null of more than it has a table for")
        Optional<Boolean> dixon) {}
