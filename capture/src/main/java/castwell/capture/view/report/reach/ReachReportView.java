package castwell.capture.view.report.reach;

import castwell.capture.view.Meaning;
import java.util.List;

/** The least arrow for every bow that carries what is wanted. */
public record ReachReportView(
    List<String> sentences,
    TargetView target,
    List<ReachedView> reach,
    @Meaning("bows of which too little is known") List<String> leftOut) {}
