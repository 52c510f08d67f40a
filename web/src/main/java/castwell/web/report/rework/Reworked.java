package castwell.web.report.rework;

import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.VirtualMass;
import castwell.analysis.cell.Cell;
import castwell.analysis.compare.Change;
import castwell.analysis.compare.Conclusion;
import castwell.analysis.compare.Control;
import castwell.analysis.compare.WhatMoved;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.rework.ConditionView;
import castwell.web.report.BowCells;
import castwell.web.report.GatesWords;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import castwell.web.report.SpeedNote;
import castwell.web.report.Strays;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What came of a rework.
 *
 * @param controls the names of the bows that were left as they were
 * @param change of the bow itself, with the same arrows
 * @param others the controls' changes
 * @param effect what is left of it without the day, in m/s
 * @param sameGpp the change of cast at the same grains per pound, likewise; empty without curves
 */
public record Reworked(
    Pair bow,
    List<String> controls,
    Change change,
    List<Change> others,
    Control control,
    Quantity effect,
    Optional<Quantity> sameGpp,
    Optional<WhatMoved> moved) {

  /** One bow on both days. */
  public record Pair(Day before, Day after, BowState stateBefore, BowState stateAfter) {

    /** The bow by one day's curve; both days' are of speeds at the bow, or both at the gates. */
    Optional<VirtualMass> model(Day day) {
      boolean areAtBow = before.bowCells().areAtBow() && after.bowCells().areAtBow();
      BowSums cells = day.bowCells();
      return (areAtBow ? cells : cells.atGates()).virtualMass();
    }
  }

  public static Reworked of(
      Transaction t, ZoneId zone, ReworkReport.Question question, ReportRequest request) {
    return new ReworkStudy(new BowCells(t, zone), zone, question, request).reworked();
  }

  /** The answer, then what it can't rule out. */
  public List<String> sentences(
      Transaction t, ZoneId zone, ReportRequest request, ReportFormat format) {
    BowCells bowCells = new BowCells(t, zone);
    return sentences(bowCells, ConditionRows.of(bowCells, this, format), request, format);
  }

  List<String> sentences(
      BowCells bowCells,
      List<ConditionView> conditions,
      ReportRequest request,
      ReportFormat format) {
    List<String> words = ReworkWords.of(this, request.gpp(), conditions, format);
    List<String> sentences =
        new ArrayList<>(SpeedNote.ofCells(cells()).in(words, bowCells.transaction(), format));
    sentences.addAll(1, GatesWords.of(bowCells.transaction(), sessions(), format));
    Set<String> bows = new LinkedHashSet<>(controls);
    bows.add(bow.before().bow());
    sentences.addAll(Strays.sentences(Strays.rows(bowCells, sessions(), bows), format));
    return sentences;
  }

  private Set<String> sessions() {
    Set<String> sessions = new LinkedHashSet<>(bow.before().sessions());
    sessions.addAll(bow.after().sessions());
    return sessions;
  }

  /** The bow's own, of the arrows shot on both days, all at the bow or all at the gates. */
  private Stream<Cell> cells() {
    return change.arrows().stream()
        .flatMap(
            arrow ->
                Stream.concat(bow.before().cells().stream(), bow.after().cells().stream())
                    .filter(cell -> cell.name().arrow().equals(arrow.arrow()))
                    .map(cell -> arrow.areAtBow() ? cell : cell.atGates()));
  }

  /** Whether every speed that is compared is the one at the bow. */
  boolean isAtBow() {
    return Stream.concat(Stream.of(change), others.stream())
        .flatMap(of -> of.arrows().stream())
        .allMatch(Change.OfArrow::areAtBow);
  }

  /** With all its uncertainty. */
  public Conclusion conclusion() {
    return Conclusion.of(effect);
  }
}
