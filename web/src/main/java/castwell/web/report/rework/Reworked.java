package castwell.web.report.rework;

import castwell.analysis.bow.BowSums;
import castwell.analysis.compare.ArrowChange;
import castwell.analysis.compare.Conclusion;
import castwell.analysis.compare.Rework;
import castwell.analysis.compare.Rework.Moved;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.TMixture;
import castwell.capture.season.KnownSeason;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.rework.ConditionView;
import castwell.web.report.BowCells;
import castwell.web.report.GatesWords;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import castwell.web.report.SpeedNote;
import castwell.web.report.Strays;
import castwell.web.report.Trade;
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
 * @param controls the bows left as they were
 * @param season all that was shot
 * @param rework the bow's two states, by the cells that count here
 */
public record Reworked(Sides sides, List<Pair> controls, KnownSeason season, Rework rework) {

  public static Reworked of(Transaction t, ZoneId zone, ReworkReport.Question question) {
    return new ReworkStudy(new BowCells(t, zone), zone, question).reworked();
  }

  public String bow() {
    return sides.before().state().bow();
  }

  List<String> controlNames() {
    return controls.stream().map(Pair::bow).toList();
  }

  /** What is compared at: of one arrow. */
  public double massKg() {
    return sides.meanMassKg();
  }

  /** As a share of the speed before. */
  public Estimate share() {
    return rework.share(massKg());
  }

  public Estimate changeMps() {
    return rework.changeMps(massKg());
  }

  double pValue() {
    return rework.change(massKg()).pValue();
  }

  public Conclusion conclusion() {
    return rework.conclusion(massKg());
  }

  /** Change of log cast at as many grains per pound as before. */
  TMixture castChange(ReportRequest request) {
    double before = sides.before().state().drawWeightN();
    double after = sides.after().state().drawWeightN();
    return rework.castChange(request.gpp(), before, after, request.scaleUN());
  }

  /** The same in m/s, the share of the cast before. */
  public Estimate castChangeMps(ReportRequest request) {
    double before = sides.before().state().drawWeightN();
    double cast = Math.exp(rework.before().cast(request.gpp(), before, 0).value());
    return castChange(request).estimate(Trade.COVERAGE).rising(log -> cast * Math.expm1(log));
  }

  public Optional<Moved> moved() {
    return rework.whatMoved();
  }

  /** Of the bow first, by repeats alone. */
  public List<ArrowChange> arrows() {
    return Stream.concat(Stream.of(sides.bow()), controls.stream())
        .flatMap(pair -> pair.arrows().stream())
        .toList();
  }

  boolean isAtBow() {
    return season.isAtBow(bow());
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
    List<String> words = new ReworkWords(this, request, format).sentences(conditions);
    BowSums cells = new BowSums(bow(), sides.cells());
    List<String> sentences =
        new ArrayList<>(
            SpeedNote.ofBows(Stream.of(cells)).in(words, bowCells.transaction(), format));
    sentences.addAll(1, GatesWords.of(bowCells.transaction(), sessions(), format));
    Set<String> bows = new LinkedHashSet<>(controlNames());
    bows.add(bow());
    Set<String> sessions = new LinkedHashSet<>(sessions());
    sentences.addAll(Strays.sentences(Strays.rows(bowCells, sessions, bows), format));
    return sentences;
  }

  private List<String> sessions() {
    return Stream.of(sides.before(), sides.after())
        .flatMap(side -> side.nearest().stream())
        .distinct()
        .toList();
  }
}
