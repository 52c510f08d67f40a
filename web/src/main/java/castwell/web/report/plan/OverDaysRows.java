package castwell.web.report.plan;

import castwell.analysis.compare.SessionDesign;
import castwell.capture.view.report.plan.DaysDesignView;
import castwell.capture.view.report.plan.OverDaysView;
import castwell.capture.word.Rounded;
import castwell.web.report.ReportFormat;
import java.util.ArrayList;
import java.util.List;

/** A plan over days, in words and as data. */
final class OverDaysRows {
  private static final int ENOUGH_SESSIONS = 4;

  private OverDaysRows() {}

  static OverDaysView of(OverDays days) {
    return new OverDaysView(
        days.cheapest().map(design -> row(days, design)),
        days.asked().map(design -> row(days, design)));
  }

  private static DaysDesignView row(OverDays days, SessionDesign design) {
    return new DaysDesignView(
        design.before(),
        design.after(),
        design.controls(),
        design.arrows(),
        design.shots(),
        design.total(),
        days.chance(design),
        100 * days.halfWidth(design),
        100 * days.floor(design));
  }

  /** The answer first. */
  static List<String> sentences(PlanDesign plan, String change, ReportFormat format) {
    OverDays days = plan.days();
    String percent = Rounded.to(1, 100 * Math.abs(plan.size().share()));
    String wanted = Rounded.to(0, 100 * plan.wish().power());
    List<String> sentences = new ArrayList<>();
    sentences.add(
        days.cheapest()
            .map(
                design ->
                    format.say(
                        "report.plan.days",
                        change,
                        percent,
                        wanted,
                        design.before(),
                        others(design, format),
                        design.arrows(),
                        design.shots()))
            .orElseGet(() -> format.say("report.plan.no_days", change, percent, wanted)));
    days.cheapest()
        .filter(design -> days.asked().isEmpty())
        .ifPresent(
            design ->
                sentences.add(
                    format.say("report.plan.floor", Rounded.to(1, 100 * days.floor(design)))));
    days.asked().ifPresent(design -> sentences.add(asked(plan, design, change, format)));
    if (days.seasonSessions() < ENOUGH_SESSIONS) {
      sentences.add(format.say("report.days.assumed", days.seasonSessions()));
    }
    return sentences;
  }

  private static String others(SessionDesign design, ReportFormat format) {
    return design.controls() == 0
        ? format.say("report.plan.no_others")
        : format.say("report.plan.others", design.controls());
  }

  private static String asked(
      PlanDesign plan, SessionDesign design, String change, ReportFormat format) {
    OverDays days = plan.days();
    double wanted = plan.wish().power();
    String key =
        days.chance(design) >= wanted
            ? "report.plan.asked_enough"
            : days.isMadeByShots(design, wanted)
                ? "report.plan.asked_more_shots"
                : "report.plan.asked_more_days";
    return format.say(
        key,
        design.before(),
        others(design, format),
        design.shots(),
        change,
        Rounded.to(0, 100 * days.chance(design)),
        Rounded.to(1, 100 * days.floor(design)));
  }
}
