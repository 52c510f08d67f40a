package castwell.analysis.compare;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellShot;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * Whether something ran along with the shots within cells: speed = its cell's mean + slope x +
 * scatter, by least squares (R: lm(speed ~ cell + x)). Speeds and x are taken from their cells'
 * means first, so that bows and arrows don't mix with the hour (Frisch and Waugh, Econometrica 1
 * (1933) 387).
 */
public final class Drift {
  /** After stringing, a bow's first shots may be another's: common practice, no source. */
  public static final int FIRST_SHOTS = 3;

  private static final double SECONDS_PER_HOUR = 3600;

  private Drift() {}

  /** The trend in m/s per hour; empty when the shots can't tell one. */
  public static Optional<Quantity> perHour(List<Cell> cells) {
    return slope(cells, shot -> shot.firedS() / SECONDS_PER_HOUR, "drift");
  }

  /** A bow's first shots of a session less its others with the same arrow, in m/s. */
  public static Optional<Quantity> firstShots(List<Cell> cellsOfOneBow) {
    Set<String> first = new HashSet<>();
    cellsOfOneBow.stream()
        .flatMap(cell -> cell.shots().stream())
        .sorted(Comparator.comparingDouble(CellShot::firedS))
        .limit(FIRST_SHOTS)
        .forEach(shot -> first.add(shot.id()));
    return slope(cellsOfOneBow, shot -> first.contains(shot.id()) ? 1 : 0, "first shots");
  }

  private static Optional<Quantity> slope(
      List<Cell> cells, ToDoubleFunction<CellShot> along, String name) {
    double xx = 0;
    double xy = 0;
    double yy = 0;
    int degrees = -1;
    for (Cell cell : cells) {
      int n = cell.shots().size();
      List<double[]> pairs = new ArrayList<>(n);
      double meanX = 0;
      double meanY = 0;
      for (CellShot shot : cell.shots()) {
        double[] pair = {along.applyAsDouble(shot), shot.speedMps()};
        pairs.add(pair);
        meanX += pair[0] / n;
        meanY += pair[1] / n;
      }
      for (double[] pair : pairs) {
        xx += (pair[0] - meanX) * (pair[0] - meanX);
        xy += (pair[0] - meanX) * (pair[1] - meanY);
        yy += (pair[1] - meanY) * (pair[1] - meanY);
      }
      degrees += Math.max(0, n - 1);
    }
    if (degrees < 1 || !(xx > 0)) {
      return Optional.empty();
    }
    double slope = xy / xx;
    double s2 = Math.max(0, yy - slope * xy) / degrees;
    return Optional.of(Quantity.of(slope, Math.sqrt(s2 / xx), new Source(name, Kind.OWN, degrees)));
  }
}
