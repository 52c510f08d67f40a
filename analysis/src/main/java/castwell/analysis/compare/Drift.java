package castwell.analysis.compare;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellShot;
import castwell.analysis.statistic.Holm;
import castwell.analysis.statistic.Mean;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * Whether speeds drifted along with something, such as the hour, within cells: speed = its cell's
 * mean + slope x + scatter, by least squares (R: lm(speed ~ cell + x)). Speeds and x are taken from
 * their cells' means first, so that bows and arrows don't mix with the hour (Frisch and Waugh,
 * Econometrica 1 (1933) 387).
 */
public final class Drift {
  /**
   * How many shots after stringing may not be like the bow's others (common practice, no source).
   */
  public static final int FIRST_SHOTS = 3;

  private static final double SECONDS_PER_HOUR = 3600;

  private Drift() {}

  /**
   * The trend in m/s per hour. Empty when the shots can't tell one: with fewer than two degrees of
   * freedom within cells, or when each cell was shot in an instant.
   */
  public static Optional<Quantity> perHour(List<Cell> cells) {
    return slope(cells, shot -> shot.firedS() / SECONDS_PER_HOUR, "drift");
  }

  /**
   * The speed of a bow's first shots of a session less that of its others with the same arrow, in
   * m/s.
   */
  static Optional<Quantity> firstShots(List<Cell> cellsOfOneBow) {
    Set<String> first = new HashSet<>();
    inOrder(cellsOfOneBow).limit(FIRST_SHOTS).forEach(shot -> first.add(shot.id()));
    return slope(cellsOfOneBow, shot -> first.contains(shot.id()) ? 1 : 0, "first shots");
  }

  /**
   * One bow's first shots of a session.
   *
   * @param differenceMps their speed less that of its others with the same arrow
   * @param adjustedP the p value, adjusted by Holm over all bows of the session that tell one
   */
  public record FirstShots(String bow, Quantity differenceMps, double adjustedP) {}

  /**
   * The first shots of every bow of a session.
   *
   * @param cells of all its bows
   */
  public static List<FirstShots> firstShotsByBow(List<Cell> cells) {
    Map<String, Quantity> differences = new LinkedHashMap<>();
    cells.stream()
        .collect(groupingBy(cell -> cell.name().bow(), LinkedHashMap::new, toList()))
        .forEach((bow, own) -> firstShots(own).ifPresent(told -> differences.put(bow, told)));
    double[] p = Holm.adjust(differences.values().stream().mapToDouble(Quantity::pValue).toArray());
    List<FirstShots> all = new ArrayList<>();
    differences.forEach((bow, told) -> all.add(new FirstShots(bow, told, p[all.size()])));
    return all;
  }

  private static Stream<CellShot> inOrder(List<Cell> cells) {
    return cells.stream()
        .flatMap(cell -> cell.shots().stream())
        .sorted(Comparator.comparingDouble(CellShot::firedS));
  }

  private static Optional<Quantity> slope(
      List<Cell> cells, ToDoubleFunction<CellShot> along, String name) {
    double xx = 0;
    double xy = 0;
    double yy = 0;
    int degrees = -1;
    for (Cell cell : cells) {
      if (cell.shots().isEmpty()) {
        continue;
      }
      // x counts from the cell's first shot, so that shots of one instant differ by exactly
      // nothing.
      double start = along.applyAsDouble(cell.shots().get(0));
      double[] x =
          cell.shots().stream().mapToDouble(shot -> along.applyAsDouble(shot) - start).toArray();
      double[] y = cell.speedsMps();
      double meanX = Mean.of(x);
      double meanY = Mean.of(y);
      for (int i = 0; i < x.length; i++) {
        xx += (x[i] - meanX) * (x[i] - meanX);
        xy += (x[i] - meanX) * (y[i] - meanY);
        yy += (y[i] - meanY) * (y[i] - meanY);
      }
      degrees += x.length - 1;
    }
    if (degrees < 1 || !(xx > 0)) {
      return Optional.empty();
    }
    double slope = xy / xx;
    double s2 = Math.max(0, yy - slope * xy) / degrees;
    return Optional.of(Quantity.of(slope, Math.sqrt(s2 / xx), new Source(name, Kind.OWN, degrees)));
  }
}
