package castwell.analysis.compare;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellSummary;
import castwell.analysis.uncertainty.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How a bow's speeds changed from one day to another, arrow by arrow and over all of them: after
 * less before, in m/s. For one arrow it is the difference of two means that Welch's test looks at
 * (Biometrika 34 (1947) 28).
 *
 * @param arrows the arrows that were shot on both days
 * @param meanMps the mean of their changes, in which each arrow weighs alike
 */
public record Change(String bow, List<OfArrow> arrows, Quantity meanMps) {

  /**
   * One arrow's means on both days and their difference, whose p value is that of Welch's test.
   *
   * @param areAtBow whether both are speeds at the bow; else both are those at the gates
   */
  public record OfArrow(
      String arrow,
      double massKg,
      int nBefore,
      int nAfter,
      Quantity beforeMps,
      Quantity afterMps,
      boolean areAtBow) {

    public Quantity changeMps() {
      return afterMps.minus(beforeMps);
    }
  }

  /**
   * The change of a bow; empty without an arrow that was shot on both days.
   *
   * @param before the earlier day's cells, one for each arrow, as is {@code after}
   */
  public static Optional<Change> of(String bow, List<Cell> before, List<Cell> after) {
    List<OfArrow> arrows = new ArrayList<>();
    for (Cell earlier : before) {
      after.stream()
          .filter(later -> later.name().arrow().equals(earlier.name().arrow()))
          .filter(later -> !later.shots().isEmpty() && !earlier.shots().isEmpty())
          .findFirst()
          .ifPresent(later -> arrows.add(ofArrow(earlier, later)));
    }
    return mean(arrows).map(mean -> new Change(bow, List.copyOf(arrows), mean));
  }

  /** The change over these arrows alone; empty without any of them. */
  public Optional<Change> with(Set<String> wanted) {
    List<OfArrow> some = arrows.stream().filter(arrow -> wanted.contains(arrow.arrow())).toList();
    return mean(some).map(mean -> new Change(bow, some, mean));
  }

  private static OfArrow ofArrow(Cell before, Cell after) {
    boolean areAtBow = before.atBow().isKnown() && after.atBow().isKnown();
    return new OfArrow(
        before.name().arrow(),
        after.massKg(),
        before.shots().size(),
        after.shots().size(),
        CellSummary.of(areAtBow ? before : before.atGates()).meanMps(),
        CellSummary.of(areAtBow ? after : after.atGates()).meanMps(),
        areAtBow);
  }

  private static Optional<Quantity> mean(List<OfArrow> arrows) {
    return arrows.stream()
        .map(OfArrow::changeMps)
        .reduce(Quantity::plus)
        .map(sum -> sum.times(1.0 / arrows.size()));
  }
}
