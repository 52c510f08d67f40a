package castwell.web.report;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;

import castwell.analysis.bow.BowCells;
import castwell.analysis.bow.Cast;
import castwell.analysis.bow.VirtualMass;
import castwell.analysis.compare.Change;
import castwell.analysis.compare.Conclusion;
import castwell.analysis.compare.Control;
import castwell.analysis.compare.WhatMoved;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.daemon.Refused;
import castwell.capture.daemon.Refused.Why;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Whether a rework helped, what of it was the day, and which of the bow's two numbers moved. */
public final class ReworkReport {
  private static final List<ReportColumn> ARROWS =
      List.of(
          ReportColumn.text("bow", "bow"),
          ReportColumn.text("arrow", "arrow"),
          new ReportColumn("mass_gr", "mass gr", 0),
          new ReportColumn("n_before", "n before", 0),
          new ReportColumn("before_fps", "before ft/s", 1),
          new ReportColumn("n_after", "n after", 0),
          new ReportColumn("after_fps", "after ft/s", 1),
          new ReportColumn("change_fps", "change ft/s", 1),
          new ReportColumn("ci95_fps", "95 % ft/s", 1),
          new ReportColumn("p", "p", 3));

  private static final List<ReportColumn> CONDITIONS =
      List.of(ReportColumn.text("what", "what"), ReportColumn.text("sentence", "what it could do"));

  /** From so many on their disagreement tells how days differ from bow to bow; by simulation. */
  private static final int ENOUGH_CONTROLS = 4;

  /**
   * What is asked.
   *
   * @param before a date or a session, as is {@code after}
   * @param controls bows to which nothing was done in between
   */
  public record Question(String bow, String before, String after, List<String> controls) {}

  /** One bow on both days. */
  private record Pair(Day before, Day after, BowState stateBefore, BowState stateAfter) {}

  private final Shelf shelf;
  private final ZoneId zone;
  private final Question question;
  private final ReportRequest request;

  private ReworkReport(Transaction t, ZoneId zone, Question question, ReportRequest request) {
    this.shelf = new Shelf(t, zone);
    this.zone = zone;
    this.question = question;
    this.request = request;
  }

  public static Report of(Transaction t, ZoneId zone, Question question, ReportRequest request) {
    return new ReworkReport(t, zone, question, request).report();
  }

  private Report report() {
    Pair bow = pair(question.bow());
    List<Pair> controls = question.controls().stream().map(this::pair).toList();
    controls.forEach(control -> checkControl(bow, control));
    Change change = change(bow);
    Set<String> arrows = new LinkedHashSet<>();
    change.arrows().forEach(arrow -> arrows.add(arrow.arrow()));
    List<Change> others = controls.stream().map(control -> change(control, arrows)).toList();
    Control control = Control.of(others.stream().map(Change::meanMps).toList());
    Quantity effect = control.takenFrom(change.meanMps());
    Optional<Quantity> sameGpp = sameGpp(bow, controls);
    Optional<WhatMoved> moved = whatMoved(bow, others, control);
    List<Map<String, Object>> conditions =
        ConditionRows.of(
            shelf,
            bow.before(),
            bow.after(),
            bow.stateBefore(),
            bow.stateAfter(),
            model(bow.before()));
    List<Map<String, Object>> rows = new ArrayList<>(rows(change));
    others.forEach(other -> rows.addAll(rows(other)));
    Conclusion conclusion = Conclusion.of(effect);
    List<String> sentences =
        sentences(bow, effect, control, sameGpp, moved, conditions, conclusion);
    return new Report(
        sentences,
        List.of(
            new ReportTable("Arrows shot on both days", ARROWS, rows),
            new ReportTable("What else differed", CONDITIONS, conditions)),
        new Fields()
            .put("bow", bow.before().bow())
            .put("before", question.before())
            .put("after", question.after())
            .put("state_before", bow.before().state())
            .put("state_after", bow.after().state())
            .put("controls", controls.stream().map(c -> c.before().bow()).toList())
            .put("sentences", sentences)
            .put("rework", rework(change, effect, control, conclusion, moved))
            .put(
                "same_gpp",
                sameGpp.map(q -> changed(q).put("gpp", request.gpp()).map()).orElse(null))
            .put("arrows", rows)
            .put("what_moved", moved.map(ReworkReport::moved).orElse(null))
            .put("conditions", conditions)
            .map());
  }

  private Pair pair(String name) {
    Rack.Named bow = shelf.bow(name);
    List<SessionCells> sessions = shelf.cells().ofBow(bow.id());
    Day before = Day.of(bow.name(), sessions, question.before(), Day.Which.EARLIEST, zone);
    Day after = Day.of(bow.name(), sessions, question.after(), Day.Which.LATEST, zone);
    return new Pair(
        before, after, shelf.state(bow, before.state()), shelf.state(bow, after.state()));
  }

  private static void checkControl(Pair bow, Pair control) {
    if (control.before().bow().equals(bow.before().bow())) {
      throw new Refused(Why.INVALID, "A bow can't be its own control: name another.");
    }
    if (!control.before().state().equals(control.after().state())) {
      throw new Refused(
          Why.INVALID,
          "%s was changed in between, on %s, so it is no control: name a bow left as it was."
              .formatted(control.before().bow(), control.after().state()));
    }
  }

  private static Change change(Pair pair) {
    if (pair.before().cells().equals(pair.after().cells())) {
      throw new Refused(
          Why.INVALID, "Before and after are the same shots: name two days or two sessions.");
    }
    return Change.of(pair.before().bow(), pair.before().cells(), pair.after().cells())
        .orElseThrow(
            () ->
                new Refused(
                    Why.INVALID,
                    "%s shot no arrow on both %s and %s: shoot the same arrows before and after."
                        .formatted(
                            pair.before().bow(), pair.before().name(), pair.after().name())));
  }

  /** A control's change with the bow's own arrows where it shot any, with all of its own else. */
  private static Change change(Pair control, Set<String> arrows) {
    Change all = change(control);
    return all.with(arrows).orElse(all);
  }

  private Optional<Quantity> sameGpp(Pair bow, List<Pair> controls) {
    Optional<Quantity> change = castChange(bow);
    List<Quantity> others = controls.stream().flatMap(c -> castChange(c).stream()).toList();
    return others.size() == controls.size()
        ? change.map(c -> Control.of(others).takenFrom(c))
        : Optional.empty();
  }

  private Optional<Quantity> castChange(Pair pair) {
    return cast(pair.after(), pair.stateAfter())
        .flatMap(after -> cast(pair.before(), pair.stateBefore()).map(after::minus))
        .filter(change -> Double.isFinite(change.standardUncertainty()));
  }

  private Optional<Quantity> cast(Day day, BowState state) {
    return model(day)
        .map(
            m ->
                Cast.at(
                        m,
                        request.gpp(),
                        state.drawWeightN(),
                        request.scaleUN(),
                        day.bow() + ", " + day.state())
                    .withScaleMps());
  }

  private static Optional<VirtualMass> model(Day day) {
    return new BowCells(day.bow() + " on " + day.name(), day.cells()).virtualMass();
  }

  private static Optional<WhatMoved> whatMoved(Pair bow, List<Change> others, Control control) {
    Quantity ratio = dayRatio(others, control);
    return model(bow.before())
        .flatMap(
            before -> model(bow.after()).map(after -> WhatMoved.between(before, after, ratio)));
  }

  /** What the day did to the controls' speeds, as a ratio; 1 without any. */
  private static Quantity dayRatio(List<Change> others, Control control) {
    if (others.isEmpty()) {
      return Quantity.exact(1);
    }
    double before =
        others.stream()
            .flatMap(other -> other.arrows().stream())
            .mapToDouble(arrow -> arrow.beforeMps().value())
            .average()
            .orElseThrow();
    // Nothing taken from nothing leaves the day alone, with all that makes it uncertain.
    return Quantity.exact(1).minus(control.takenFrom(Quantity.exact(0)).times(1 / before));
  }

  private static Map<String, Object> rework(
      Change change,
      Quantity effect,
      Control control,
      Conclusion conclusion,
      Optional<WhatMoved> moved) {
    return changed(effect)
        .put("bow_change_fps", Trade.value(METRES_PER_FOOT, change.meanMps()))
        .put(
            "control_change_fps",
            control.meanChange().map(q -> Trade.value(METRES_PER_FOOT, q)).orElse(null))
        .put("controls_disagree_by_fps", Trade.in(METRES_PER_FOOT, control.betweenBows()))
        .put("conclusion", conclusion.words())
        .put("what_moved", moved.map(m -> m.answer().sentence()).orElse("can't tell"))
        .map();
  }

  /** The interval and p are of repeats alone; what set-ups have in common stands beside them. */
  private static Fields changed(Quantity change) {
    Quantity own = change.only(Kind.OWN);
    return new Fields()
        .put("change_fps", Trade.value(METRES_PER_FOOT, own))
        .put("ci95_fps", Trade.ci95(METRES_PER_FOOT, own))
        .put("p", own.pValue())
        .put("degrees_of_freedom", Trade.finite(own.effectiveDegreesOfFreedom()))
        .put("ci95_with_common_fps", Trade.ci95(METRES_PER_FOOT, change));
  }

  private static List<Map<String, Object>> rows(Change change) {
    return change.arrows().stream()
        .map(
            arrow -> {
              Quantity own = arrow.changeMps().only(Kind.OWN);
              return new Fields()
                  .put("bow", change.bow())
                  .put("arrow", arrow.arrow())
                  .put("mass_gr", Trade.in(KILOGRAMS_PER_GRAIN, arrow.massKg()))
                  .put("n_before", arrow.nBefore())
                  .put("before_fps", Trade.value(METRES_PER_FOOT, arrow.beforeMps()))
                  .put("n_after", arrow.nAfter())
                  .put("after_fps", Trade.value(METRES_PER_FOOT, arrow.afterMps()))
                  .put("change_fps", Trade.value(METRES_PER_FOOT, own))
                  .put("ci95_fps", Trade.ci95(METRES_PER_FOOT, own))
                  .put("p", own.pValue())
                  .map();
            })
        .toList();
  }

  private static Map<String, Object> moved(WhatMoved moved) {
    return new Fields()
        .put("answer", moved.answer().name().toLowerCase(Locale.ROOT).replace('_', ' '))
        .put("sentence", moved.answer().sentence())
        .put("joint_p", moved.jointP())
        .put("energy_change_ftlbf", Trade.value(JOULES_PER_FOOT_POUND, moved.energyJ()))
        .put("energy_change_ci95_ftlbf", Trade.ci95(JOULES_PER_FOOT_POUND, moved.energyJ()))
        .put("energy_p", moved.energyJ().pValue())
        .put("virtual_mass_change_gr", Trade.value(KILOGRAMS_PER_GRAIN, moved.virtualMassKg()))
        .put("virtual_mass_change_ci95_gr", Trade.ci95(KILOGRAMS_PER_GRAIN, moved.virtualMassKg()))
        .put("virtual_mass_p", moved.virtualMassKg().pValue())
        .map();
  }

  private List<String> sentences(
      Pair bow,
      Quantity effect,
      Control control,
      Optional<Quantity> sameGpp,
      Optional<WhatMoved> moved,
      List<Map<String, Object>> conditions,
      Conclusion conclusion) {
    List<String> sentences = new ArrayList<>();
    String by = Trade.said(METRES_PER_FOOT, "ft/s", 1, effect.only(Kind.OWN));
    String name = bow.before().bow();
    sentences.add(
        switch (conclusion) {
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
                  String.join(" and ", question.controls()),
                  Trade.said(
                      METRES_PER_FOOT,
                      "ft/s",
                      1,
                      control.meanChange().orElseThrow().only(Kind.OWN))));
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
    sameGpp.ifPresent(
        q ->
            sentences.add(
                "At the same %s grains per pound, each with its own draw weight, the change is %s."
                    .formatted(
                        Trade.plain(request.gpp(), 0), Trade.said(METRES_PER_FOOT, "ft/s", 1, q))));
    sentences.add(
        moved
            .map(m -> m.answer().sentence())
            .orElse(
                "What moved can't be told: shoot three arrows well apart in mass on both days."));
    conditions.stream()
        .filter(row -> row.get("effect_percent") != null)
        .forEach(row -> sentences.add((String) row.get("sentence")));
    return sentences;
  }
}
