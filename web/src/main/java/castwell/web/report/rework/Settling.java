package castwell.web.report.rework;

import castwell.analysis.cell.CellSums;
import castwell.analysis.compare.SessionDesign;
import castwell.analysis.compare.SessionPower;
import castwell.analysis.season.Priors;
import castwell.capture.word.Rounded;
import castwell.web.report.ReportFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.DoubleStream;

/** What leaves a rework open, and what would settle it. */
final class Settling {
  private static final double ALPHA = 0.05;
  private static final double CHANCE = 0.8;

  /** Changes that one may wish to see: the first that what was shot doesn't. */
  private static final double[] CHANGES = {0.015, 0.01, 0.005};

  private final Reworked reworked;
  private final SessionPower power;
  private final SessionDesign shot;

  Settling(Reworked reworked) {
    this.reworked = reworked;
    Sides sides = reworked.sides();
    List<CellSums> cells = sides.cells();
    power =
        new SessionPower(
            reworked.season().season().grid(), shotSd(cells), reworked.season().setUpU(), ALPHA);
    int arrows = Math.max(1, sides.bow().arrows().size());
    double shots = cells.stream().mapToInt(CellSums::n).average().orElseThrow();
    shot =
        new SessionDesign(
            sides.before().sessions().size(),
            sides.after().sessions().size(),
            reworked.controls().size(),
            arrows,
            (int) Math.max(1, Math.round(shots)));
  }

  private static double shotSd(List<CellSums> cells) {
    int degrees = cells.stream().mapToInt(cell -> cell.n() - 1).sum();
    double squares = cells.stream().mapToDouble(CellSums::squaresOfLogs).sum();
    return degrees > 0 ? Math.sqrt(squares / degrees) : Priors.ASSUMED.shotSd();
  }

  /** Nothing where both were shot in one session, over which no day stands between them. */
  List<String> sentences(ReportFormat format) {
    if (reworked.sides().shareASession()) {
      return List.of();
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(format.say("report.rework.days_alone", Rounded.to(1, 100 * power.floor(shot))));
    DoubleStream.of(CHANGES)
        .filter(change -> power.of(shot, change) < CHANCE)
        .findFirst()
        .ifPresent(change -> sentences.add(settled(change, format)));
    return sentences;
  }

  private String settled(double change, ReportFormat format) {
    String percent = Rounded.to(1, 100 * change);
    OptionalInt after = power.sessionsAfter(shot, change, CHANCE);
    if (after.isPresent()) {
      int more = after.getAsInt() - shot.after();
      return format.say(
          shot.controls() == 0 ? "report.rework.more_days" : "report.rework.more_days_controls",
          more,
          percent,
          format.and(reworked.controlNames()));
    }
    Optional<SessionDesign> next =
        power.cheapest(change, CHANCE, shot.arrows(), Math.max(1, otherBows()));
    return next.map(
            design ->
                format.say(
                    "report.rework.next_time",
                    percent,
                    design.before(),
                    design.controls(),
                    design.arrows(),
                    design.shots()))
        .orElseGet(() -> format.say("report.rework.never_settled", percent));
  }

  private int otherBows() {
    return (int) reworked.season().sums().stream().map(c -> c.name().bow()).distinct().count() - 1;
  }
}
