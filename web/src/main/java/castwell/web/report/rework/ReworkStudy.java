package castwell.web.report.rework;

import castwell.analysis.compare.Rework;
import castwell.analysis.season.Season;
import castwell.analysis.season.SeasonCell;
import castwell.capture.season.KnownSeason;
import castwell.capture.season.SeasonLedger;
import castwell.capture.store.Rack;
import castwell.web.report.BowCells;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Works out what came of a rework, by the season's model. */
final class ReworkStudy {
  private final BowCells bowCells;
  private final ZoneId zone;
  private final ReworkReport.Question question;

  ReworkStudy(BowCells bowCells, ZoneId zone, ReworkReport.Question question) {
    this.bowCells = bowCells;
    this.zone = zone;
    this.question = question;
  }

  Reworked reworked() {
    Rack.Named bow = bowCells.bow(question.bow());
    KnownSeason season =
        SeasonLedger.of(bowCells.transaction(), zone)
            .orElseThrow(() -> SideFinder.notShot(bow.name(), question.before(), Set.of()));
    Sides sides =
        new SideFinder(bowCells, zone, bow, season).sides(question.before(), question.after());
    Controls controls = new Controls(sides, season);
    List<Pair> left =
        question.controls().isEmpty()
            ? controls.all()
            : controls.named(
                question.controls().stream().map(name -> bowCells.bow(name).name()).toList());
    return new Reworked(sides, left, season, rework(sides, season));
  }

  private Rework rework(Sides sides, KnownSeason season) {
    boolean isAll = question.controls().isEmpty() && sides.areWholeStates();
    Season fit =
        isAll
            ? season.season()
            : season.among(cell -> isWanted(cell, sides), cell -> state(cell, sides));
    return new Rework(
        fit.state(state(sides.before(), sides, "before")),
        fit.state(state(sides.after(), sides, "after")));
  }

  /** Of the bow itself, its sessions as they were asked for; of others, all. */
  private boolean isWanted(SeasonCell cell, Sides sides) {
    if (!cell.bow().equals(sides.before().state().bow())) {
      return question.controls().isEmpty() || controls().contains(cell.bow());
    }
    return sides.areWholeStates()
        || Stream.of(sides.before(), sides.after()).anyMatch(side -> isOf(cell, side));
  }

  private Set<String> controls() {
    Set<String> names = new HashSet<>();
    question.controls().forEach(name -> names.add(bowCells.bow(name).name()));
    return names;
  }

  private static boolean isOf(SeasonCell cell, Side side) {
    return cell.state().equals(KnownSeason.name(side.state().bow(), side.stateName()))
        && side.sessions().contains(cell.session());
  }

  private static String state(SeasonCell cell, Sides sides) {
    return Stream.of(sides.before(), sides.after())
        .filter(side -> isOf(cell, side))
        .findFirst()
        .map(side -> state(side, sides, side.equals(sides.before()) ? "before" : "after"))
        .orElse(cell.state());
  }

  /** Two sessions of one state are told apart by a name of their own. */
  private static String state(Side side, Sides sides, String which) {
    String name = KnownSeason.name(side.state().bow(), side.stateName());
    return sides.areOneState() ? name + ", " + which : name;
  }
}
