package castwell.capture.view.report.reach;

import castwell.capture.view.Meaning;
import java.util.List;

/** For every bow the lightest arrow that carries as much as is wanted. */
public record ReachReportView(
    List<String> sentences,
    TargetView target,
    List<ReachedView> reach,
    @Meaning("bows of which too little is known") List<String> leftOut) {}
