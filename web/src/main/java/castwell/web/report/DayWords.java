package castwell.web.report;

import castwell.analysis.season.SessionDays.Day;
import castwell.analysis.uncertainty.Estimate;
import castwell.capture.season.KnownSeason;
import castwell.web.unit.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a season tells of how days differ, and what it can't tell yet. */
public final class DayWords {
  /** With fewer the priors weigh more than what was shot. */
  private static final int ENOUGH_SESSIONS = 4;

  /** Weather and hands seldom change all bows' speeds by more (assumed). */
  private static final double MOST_USUAL = 0.02;

  private DayWords() {}

  /** What a session's day did to all bows alike; nothing where there is no other to compare. */
  public static List<String> ofSession(
      Optional<KnownSeason> season, String session, ReportFormat format) {
    List<String> words = new ArrayList<>(leftOut(season, session, format));
    season
        .filter(known -> known.season().sessions() > 1)
        .flatMap(
            known -> known.days().stream().filter(d -> d.session().equals(session)).findFirst())
        .map(day -> ofDay(day, !season.get().conditions().isEmpty(), format))
        .ifPresent(words::addAll);
    return words;
  }

  private static List<String> leftOut(
      Optional<KnownSeason> season, String session, ReportFormat format) {
    return season.stream()
        .flatMap(known -> known.leftOut(session).stream())
        .map(
            cell ->
                format.say(
                    "report.days.left_out", cell.name().arrow(), cell.name().bow(), cell.n()))
        .toList();
  }

  private static List<String> ofDay(Day day, boolean isExplained, ReportFormat format) {
    Estimate effect = day.effect().estimate(Trade.COVERAGE).rising(Math::expm1);
    double low = effect.interval().low();
    double high = effect.interval().high();
    String key = low > 0 ? "of_session" : high < 0 ? "of_session_slower" : "like_usual";
    List<String> words = new ArrayList<>();
    words.add(
        format.say(
            "report.days." + key,
            format.plain(Dimension.SHARE, 1, Math.abs(effect.value())),
            format.interval(Dimension.SHARE, effect.interval())));
    if (low > MOST_USUAL || high < -MOST_USUAL) {
      words.add(format.say("report.days.unlike"));
    }
    if (isExplained) {
      words.add(
          format.say(
              "report.days.explained",
              format.plain(Dimension.SHARE, 1, Math.expm1(day.explained()))));
    }
    return words;
  }

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
