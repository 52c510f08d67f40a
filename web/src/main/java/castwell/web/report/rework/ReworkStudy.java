package castwell.web.report.rework;

import castwell.analysis.bow.VirtualMass;
import castwell.analysis.cell.Cell;
import castwell.analysis.compare.Change;
import castwell.analysis.compare.Control;
import castwell.analysis.compare.WhatMoved;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.cell.SessionCells;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.web.report.BowCells;
import castwell.web.report.ReportRequest;
import castwell.web.report.rework.Reworked.Pair;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Works out what came of a rework. */
final class ReworkStudy {
  private final BowCells bowCells;
  private final ZoneId zone;
  private final ReworkReport.Question question;
  private final ReportRequest request;

  ReworkStudy(
      BowCells bowCells, ZoneId zone, ReworkReport.Question question, ReportRequest request) {
    this.bowCells = bowCells;
    this.zone = zone;
    this.question = question;
    this.request = request;
  }

  Reworked reworked() {
    Pair bow = bow();
    List<Pair> controls =
        question.controls().stream().map(name -> control(name, bow)).distinct().toList();
    controls.forEach(control -> checkControl(bow, control));
    Change change = change(bow);
    Set<String> arrows = new LinkedHashSet<>();
    change.arrows().forEach(arrow -> arrows.add(arrow.arrow()));
    List<Change> others = controls.stream().map(control -> change(control, arrows)).toList();
    Control control = Control.of(others.stream().map(Change::meanMps).toList());
    return new Reworked(
        bow,
        controls.stream().map(c -> c.before().bow()).toList(),
        change,
        others,
        control,
        control.takenFrom(change.meanMps()),
        sameGpp(bow, controls),
        whatMoved(bow, others, control));
  }

  /** A date on which nothing was shot may name the bow's state since then. */
  private Pair bow() {
    return pair(
        question.bow(),
        cell -> cell.name().state().equals(question.before()),
        cell -> cell.name().state().equals(question.after()),
        Set.of());
  }

  private Pair control(String name, Pair bow) {
    Set<String> days = new LinkedHashSet<>(bow.before().sessions());
    days.addAll(bow.after().sessions());
    return pair(
        name,
        cell -> bow.before().sessions().contains(cell.name().session()),
        cell -> bow.after().sessions().contains(cell.name().session()),
        days);
  }

  /**
   * @param also sessions that may be meant beside those named
   */
  private Pair pair(
      String name, Predicate<Cell> elseBefore, Predicate<Cell> elseAfter, Set<String> also) {
    Rack.Named bow = bowCells.bow(name);
    Day before = day(bow, question.before(), elseBefore, Day.Which.EARLIEST, also);
    Day after = day(bow, question.after(), elseAfter, Day.Which.LATEST, also);
    return new Pair(
        before, after, bowCells.state(bow, before.state()), bowCells.state(bow, after.state()));
  }

  /** Of the sessions that may be meant; of all the bow's where none of them is. */
  private Day day(
      Rack.Named bow, String name, Predicate<Cell> otherwise, Day.Which which, Set<String> also) {
    List<SessionCells> meant = meant(name, also);
    boolean isAmong =
        meant.stream()
            .flatMap(session -> session.cells().stream())
            .anyMatch(cell -> cell.name().bow().equals(bow.name()) && !cell.shots().isEmpty());
    List<SessionCells> sessions = isAmong ? meant : bowCells.cells().ofBow(bow.id());
    return Day.of(bow.name(), sessions, name, otherwise, which, zone);
  }

  /** By their names or dates; a session of that date may have begun the day before. */
  private List<SessionCells> meant(String name, Set<String> also) {
    Set<String> names = new LinkedHashSet<>(also);
    Instant from = Instant.EPOCH;
    Instant to = Instant.EPOCH;
    try {
      LocalDate date = LocalDate.parse(name);
      from = date.minusDays(1).atStartOfDay(zone).toInstant();
      to = date.plusDays(1).atStartOfDay(zone).toInstant();
    } catch (DateTimeParseException e) {
      // a session's name
    }
    bowCells
        .transaction()
        .sessions()
        .named(name, from, to)
        .forEach(session -> names.add(session.name()));
    return names.stream().map(bowCells.cells()::ofSession).toList();
  }

  private static void checkControl(Pair bow, Pair control) {
    if (control.before().bow().equals(bow.before().bow())) {
      throw Refused.of(Why.INVALID, "refused.own_control");
    }
    if (!control.before().state().equals(control.after().state())) {
      throw Refused.of(
          Why.INVALID, "refused.changed_control", control.before().bow(), control.after().state());
    }
  }

  private static Change change(Pair pair) {
    if (pair.before().cells().equals(pair.after().cells())) {
      throw Refused.of(Why.INVALID, "refused.same_shots");
    }
    return Change.of(pair.before().bow(), pair.before().cells(), pair.after().cells())
        .orElseThrow(
            () ->
                Refused.of(
                    Why.INVALID,
                    "refused.no_common_arrow",
                    pair.before().bow(),
                    pair.before().name(),
                    pair.after().name()));
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
    return cast(pair.model(pair.after()), pair.stateAfter())
        .flatMap(after -> cast(pair.model(pair.before()), pair.stateBefore()).map(after::minus))
        .filter(change -> Double.isFinite(change.standardUncertainty()));
  }

  private Optional<Quantity> cast(Optional<VirtualMass> model, BowState state) {
    return model.map(m -> request.cast(m, state).withScaleMps());
  }

  private static Optional<WhatMoved> whatMoved(Pair bow, List<Change> others, Control control) {
    Quantity ratio = dayRatio(others, control);
    return bow.model(bow.before())
        .flatMap(
            before -> bow.model(bow.after()).map(after -> WhatMoved.between(before, after, ratio)));
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
}
