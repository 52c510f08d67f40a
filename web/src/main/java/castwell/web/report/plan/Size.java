package castwell.web.report.plan;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;

import castwell.analysis.cell.CellSums;
import castwell.capture.season.KnownSeason;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How large the change is that should be seen, in both its units.
 *
 * @param share of the speed
 * @param speedMps the bow's, the mean of its cells of the last session
 * @param isSpeedAssumed since the bow was never shot
 */
public record Size(double mps, double share, double speedMps, boolean isSpeedAssumed) {
  /** What bows throw as a rule (common practice, no source). */
  private static final double USUAL_MPS = 150 * METRES_PER_FOOT;

  static Size of(Wish wish, String bow, Optional<KnownSeason> season) {
    OptionalDouble known = season.map(all -> speed(all, bow)).orElseGet(OptionalDouble::empty);
    double speed = known.orElse(USUAL_MPS);
    double share =
        wish.changeShare()
            .orElseGet(
                () -> wish.changeMps().orElse(Wish.USUAL_CHANGE_FPS * METRES_PER_FOOT) / speed);
    return new Size(share * speed, share, speed, known.isEmpty());
  }

  private static OptionalDouble speed(KnownSeason season, String bow) {
    List<CellSums> cells =
        season.sums().stream().filter(cell -> cell.name().bow().equals(bow)).toList();
    String last = cells.isEmpty() ? "" : cells.get(cells.size() - 1).name().session();
    return cells.stream()
        .filter(cell -> cell.name().session().equals(last))
        .mapToDouble(CellSums::meanMps)
        .average();
  }

  /** Of the log speed. */
  double log() {
    return Math.log1p(share);
  }
}
