package castwell.capture.view.report.plan;

import castwell.capture.view.Meaning;

/** Sessions before and after a rework, and what they would tell. */
public record DaysDesignView(
    int sessionsBefore,
    int sessionsAfter,
    @Meaning("bows left as they are, shot in each session") int controls,
    int arrows,
    @Meaning("of each arrow from each bow in a session") int shotsEach,
    int shotsInAll,
    @Meaning("how surely the change is seen, 0 to 1") double chance,
    @Meaning(value = "about half the width of the interval that will be told", unit = "percent")
        double halfWidthPercent,
    @Meaning(value = "what no number of shots gets under with these sessions", unit = "percent")
        double floorPercent) {}
