package castwell.web.workbench;

import castwell.capture.command.Refused;
import castwell.web.chart.Chart;
import castwell.web.report.ReportFormat;
import castwell.web.report.rework.ReworkChoice;
import castwell.web.report.rework.ReworkReport.Question;
import castwell.web.report.rework.Reworked;
import java.util.ArrayList;
import java.util.List;

/** The page that tells whether a rework helped, or it was only the day. */
public final class ReworkPage {
  private final PageRequest request;

  /**
   * @param before what is asked for, as {@code after} and {@code controls}
   * @param refused why there is no answer, "" if there is one
   */
  public record View(
      ReworkChoice form,
      String before,
      String after,
      List<String> controls,
      String refused,
      List<String> answer,
      List<Chart> charts) {}

  private ReworkPage(PageRequest request) {
    this.request = request;
  }

  public static Page of(PageRequest request) {
    return new Page(
        MenuEntry.REWORK, "rework", request.say("rework.title"), new ReworkPage(request).view());
  }

  private View view() {
    ReworkChoice form = ReworkChoice.of(request.t(), request.zone(), request.text("bow"));
    String before = request.text("before").map(form::value).orElse(form.before());
    String after = request.text("after").map(form::value).orElse(form.after());
    Question question = new Question(form.bow(), before, after, request.texts("control"));
    if (form.bow().isEmpty()) {
      return refused(form, question, request.say("rework.empty"));
    }
    if (!form.isTwice()) {
      return refused(form, question, request.say("rework.once", form.bow()));
    }
    try {
      return answered(form, question);
    } catch (Refused refused) {
      return refused(form, question, request.speech().say(refused.phrase()));
    }
  }

  private View answered(ReworkChoice form, Question question) {
    Reworked reworked = Reworked.of(request.t(), request.zone(), question);
    ReworkCharts drawn = new ReworkCharts(request, reworked);
    List<Chart> charts = new ArrayList<>(List.of(drawn.changes()));
    drawn.regions().ifPresent(charts::add);
    List<String> answer =
        reworked.sentences(
            request.t(), request.zone(), request.request(), new ReportFormat(request.speech()));
    return view(form, question, "", answer, charts);
  }

  private static View refused(ReworkChoice form, Question question, String why) {
    return view(form, question, why, List.of(), List.of());
  }

  private static View view(
      ReworkChoice form,
      Question question,
      String refused,
      List<String> answer,
      List<Chart> charts) {
    return new View(
        form, question.before(), question.after(), question.controls(), refused, answer, charts);
  }
}
