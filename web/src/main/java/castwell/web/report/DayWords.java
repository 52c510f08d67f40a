package castwell.web.report;

import castwell.capture.season.KnownSeason;
import java.util.ArrayList;
import java.util.List;

/** What a season can't tell yet of how days differ. */
public final class DayWords {
  /** With fewer the priors weigh more than what was shot. */
  private static final int ENOUGH_SESSIONS = 4;

  private DayWords() {}

  public static List<String> of(KnownSeason season, ReportFormat format) {
    List<String> words = new ArrayList<>();
    int sessions = season.season().sessions();
    if (sessions < ENOUGH_SESSIONS) {
      words.add(format.say("report.days.assumed", sessions));
    }
    if (!season.areDaysShared()) {
      words.add(format.say("report.days.never_two_bows"));
    }
    return words;
  }
}
