package castwell.capture.view.report.rework;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.List;

/** What a rework changed, on any day. */
public record ReworkView(
    @Meaning(value = "of the speed with an arrow of mass_gr", unit = "percent")
        double changePercent,
    Interval95 ci95Percent,
    double changeFps,
    Interval95 ci95Fps,
    double p,
    @Meaning(value = "the farther end of ci95_percent", unit = "percent")
        double noChangeLargerThanPercent,
    @Meaning("faster, slower, can't tell, or no change larger than so many per cent")
        String conclusion,
    @Meaning(value = "mean of the arrows shot before and after", unit = "grain") double massGr,
    @Meaning("bows shot before and after and left as they were, which tell the days' part")
        List<String> controls,
    List<String> sessionsBefore,
    List<String> sessionsAfter) {}
