package castwell.web.report.bow;

import static castwell.web.unit.Dimension.ARROW_MASS;

import castwell.analysis.bow.Advice;
import castwell.analysis.bow.Advice.Count;
import castwell.analysis.bow.Advice.Figure;
import castwell.analysis.bow.Advice.Mass;
import castwell.analysis.bow.Advice.Probability;
import castwell.capture.word.Rounded;
import castwell.web.report.ReportFormat;
import java.util.List;

/** What to shoot next, in words. */
public final class AdviceWords {
  private AdviceWords() {}

  public static List<String> of(List<Advice> advice, ReportFormat format) {
    return advice.stream().map(one -> of(one, format)).toList();
  }

  private static String of(Advice advice, ReportFormat format) {
    Object[] figures = advice.figures().stream().map(figure -> shown(figure, format)).toArray();
    return format.say("report.advice." + advice.code(), figures);
  }

  private static String shown(Figure figure, ReportFormat format) {
    if (figure instanceof Mass mass) {
      return format.plain(ARROW_MASS, 0, mass.kg());
    }
    if (figure instanceof Count count) {
      return String.valueOf(count.n());
    }
    return Rounded.p(((Probability) figure).p());
  }
}
