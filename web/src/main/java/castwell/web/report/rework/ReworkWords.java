package castwell.web.report.rework;

import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.SHARE;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.compare.Conclusion;
import castwell.analysis.compare.Rework;
import castwell.analysis.uncertainty.Estimate;
import castwell.capture.view.report.rework.ConditionView;
import castwell.capture.word.Rounded;
import castwell.web.report.DayWords;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A rework in words: the answer, then what it can't rule out. */
final class ReworkWords {
  private static final int MOST_NAMED = 4;

  private final Reworked reworked;
  private final ReportRequest request;
  private final ReportFormat format;

  ReworkWords(Reworked reworked, ReportRequest request, ReportFormat format) {
    this.reworked = reworked;
    this.request = request;
    this.format = format;
  }

  List<String> sentences(List<ConditionView> conditions) {
    List<String> sentences = new ArrayList<>(List.of(answer()));
    if (reworked.sides().areOneState()) {
      sentences.add(format.say("report.rework.nothing_done", reworked.bow()));
    }
    if (reworked.sides().bow().arrows().isEmpty()) {
      sentences.add(format.say("report.rework.no_common_arrow"));
    }
    sentences.addAll(days());
    if (reworked.conclusion() == Conclusion.CANT_TELL) {
      sentences.addAll(new Settling(reworked).sentences(format));
    }
    sentences.add(
        format.say(
            "report.rework.same_gpp",
            Rounded.to(0, request.gpp()),
            format.said(SPEED, 1, reworked.castChangeMps(request))));
    sentences.add(moved(reworked.moved().map(Rework.Moved::answer), format));
    conditions.stream()
        .filter(row -> row.effectPercent().isPresent())
        .forEach(row -> sentences.add(row.sentence()));
    return sentences;
  }

  private String answer() {
    Estimate share = reworked.share();
    Estimate mps = reworked.changeMps();
    String with = format.plain(ARROW_MASS, 0, reworked.massKg());
    String bow = reworked.bow();
    String low = signed(share.interval().low());
    String high = signed(share.interval().high());
    return switch (reworked.conclusion()) {
      case FASTER -> told("report.rework.faster", bow, mps, share, with);
      case SLOWER ->
          told("report.rework.slower", bow, mps.falling(x -> -x), share.falling(x -> -x), with);
      case NO_LARGER_CHANGE ->
          format.say("report.rework.no_larger_change", bow, bound(share), low, high, with);
      case CANT_TELL ->
          format.say("report.rework.cant_tell", bow, low, high, format.said(SPEED, 1, mps), with);
    };
  }

  private String told(String key, String bow, Estimate mps, Estimate share, String with) {
    return format.say(key, bow, format.said(SPEED, 1, mps), format.said(SHARE, 1, share), with);
  }

  private static String signed(double share) {
    return String.format(Locale.ROOT, "%+.1f", 100 * share);
  }

  /** In per cent, rounded up, so that it is never said too small. */
  private static String bound(Estimate share) {
    return Rounded.to(1, Math.ceil(1000 * share.interval().largest()) / 10);
  }

  /** In the words of the data: one for each conclusion. */
  static String conclusion(Reworked reworked) {
    return switch (reworked.conclusion()) {
      case FASTER -> "faster";
      case SLOWER -> "slower";
      case NO_LARGER_CHANGE -> "no change larger than " + bound(reworked.share()) + " %";
      case CANT_TELL -> "can't tell";
    };
  }

  private List<String> days() {
    if (reworked.sides().shareASession()) {
      return List.of(format.say("report.rework.one_session"));
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(controls());
    sentences.addAll(DayWords.of(reworked.season(), format));
    return sentences;
  }

  private String controls() {
    int many = reworked.controls().size();
    return many == 0
        ? format.say("report.rework.no_control")
        : many > MOST_NAMED
            ? format.say("report.rework.many_controls", many)
            : format.say("report.rework.controls", format.and(reworked.controlNames()), many);
  }

  /** Which of the bow's two numbers moved; empty where its arrows can't split them. */
  static String moved(Optional<Rework.Answer> answer, ReportFormat format) {
    return format.say(
        "report.rework.moved_"
            + answer.map(told -> told.name().toLowerCase(Locale.ROOT)).orElse("not_split"));
  }
}
