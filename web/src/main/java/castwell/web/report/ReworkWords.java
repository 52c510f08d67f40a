package castwell.web.report;

import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.compare.Control;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A rework in words: the answer, then what it can't rule out. */
final class ReworkWords {
  /** From so many on their disagreement tells how days differ from bow to bow; by simulation. */
  private static final int ENOUGH_CONTROLS = 4;

  private ReworkWords() {}

  static List<String> of(
      Reworked reworked, double gpp, List<Map<String, Object>> conditions, Saying saying) {
    List<String> sentences = new ArrayList<>();
    Reworked.Pair bow = reworked.bow();
    Quantity effect = reworked.effect();
    Control control = reworked.control();
    String by = saying.said(SPEED, 1, effect.only(Kind.OWN));
    String name = bow.before().bow();
    sentences.add(
        switch (reworked.conclusion()) {
          case FASTER -> "%s is faster by %s with the same arrows.".formatted(name, by);
          case SLOWER -> "%s is slower: a change of %s with the same arrows.".formatted(name, by);
          case CANT_TELL ->
              "Whether %s changed can't be told: %s with the same arrows.".formatted(name, by);
        });
    if (control.changes().isEmpty()) {
      sentences.add(
          "No bow was shot unchanged on both days, so this can't rule out the day, the weather, the loose or moved gates.");
    } else {
      sentences.add(
          "The day itself was taken out by %s, which changed by %s."
              .formatted(
                  String.join(" and ", reworked.controls()),
                  saying.said(SPEED, 1, control.meanChange().orElseThrow().only(Kind.OWN))));
    }
    if (!control.changes().isEmpty() && control.changes().size() < ENOUGH_CONTROLS) {
      sentences.add(
          "That takes a day to do the same to every bow; with fewer than four controls it can't be shown.");
    }
    if (control.betweenBows() > 0) {
      sentences.add(
          "The controls disagree by more than their scatter, which makes the interval wider.");
    }
    if (bow.before().state().equals(bow.after().state())) {
      sentences.add(
          "The rack knows of nothing done to %s in between: enter its new state.".formatted(name));
    }
    reworked
        .sameGpp()
        .ifPresent(
            q ->
                sentences.add(
                    "At the same %s grains per pound, each with its own draw weight, the change is %s."
                        .formatted(Trade.plain(gpp, 0), saying.said(SPEED, 1, q))));
    sentences.add(
        reworked
            .moved()
            .map(m -> m.answer().sentence())
            .orElse(
                "What moved can't be told: shoot three arrows well apart in mass on both days."));
    conditions.stream()
        .filter(row -> row.get("effect_percent") != null)
        .forEach(row -> sentences.add((String) row.get("sentence")));
    return sentences;
  }
}
