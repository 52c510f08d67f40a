package castwell.web.report.rework;

import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.compare.Control;
import castwell.analysis.compare.WhatMoved;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.view.report.rework.ConditionView;
import castwell.capture.word.Rounded;
import castwell.web.report.ReportFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A rework in words: the answer, then what it can't rule out. */
final class ReworkWords {
  /** From so many on their disagreement tells how days differ from bow to bow; by simulation. */
  private static final int ENOUGH_CONTROLS = 4;

  private ReworkWords() {}

  static List<String> of(
      Reworked reworked, double gpp, List<ConditionView> conditions, ReportFormat format) {
    List<String> sentences = new ArrayList<>();
    Reworked.Pair bow = reworked.bow();
    Quantity effect = reworked.effect();
    Control control = reworked.control();
    String by = format.said(SPEED, 1, effect.only(Kind.OWN));
    String name = bow.before().bow();
    sentences.add(format.say(conclusion(reworked), name, by));
    if (control.changes().isEmpty()) {
      sentences.add(format.say("report.rework.no_control"));
    } else {
      sentences.add(
          format.say(
              "report.rework.day_taken_out",
              format.and(reworked.controls()),
              format.said(SPEED, 1, control.meanChange().orElseThrow().only(Kind.OWN))));
    }
    if (!control.changes().isEmpty() && control.changes().size() < ENOUGH_CONTROLS) {
      sentences.add(format.say("report.rework.few_controls"));
    }
    if (control.betweenBows() > 0) {
      sentences.add(format.say("report.rework.controls_disagree"));
    }
    if (bow.before().state().equals(bow.after().state())) {
      sentences.add(format.say("report.rework.nothing_done", name));
    }
    reworked
        .sameGpp()
        .ifPresent(
            q ->
                sentences.add(
                    format.say(
                        "report.rework.same_gpp", Rounded.to(0, gpp), format.said(SPEED, 1, q))));
    sentences.add(
        reworked
            .moved()
            .map(m -> moved(m.answer(), format))
            .orElseGet(() -> format.say("report.rework.moved_unknown")));
    conditions.stream()
        .filter(row -> row.effectPercent().isPresent())
        .forEach(row -> sentences.add(row.sentence()));
    return sentences;
  }

  private static String conclusion(Reworked reworked) {
    return switch (reworked.conclusion()) {
      case FASTER -> "report.rework.faster";
      case SLOWER -> "report.rework.slower";
      case CANT_TELL -> "report.rework.cant_tell";
    };
  }

  /** Which of the bow's two numbers moved. */
  static String moved(WhatMoved.Answer answer, ReportFormat format) {
    return format.say("report.rework.moved_" + answer.name().toLowerCase(Locale.ROOT));
  }
}
