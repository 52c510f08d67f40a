package castwell.web.report;

import castwell.analysis.cell.Cell;
import castwell.analysis.outlier.DixonQ;
import castwell.analysis.outlier.GeneralizedEsd;
import castwell.analysis.outlier.Grubbs;
import castwell.analysis.outlier.ModifiedZ;
import castwell.capture.view.report.cell.AloneView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the tests for one set alone would call outliers in a cell: told beside the session's strays,
 * for whoever has but one cell. They set nothing aside.
 */
final class AloneRows {
  private static final double ALPHA = 0.05;
  private static final int CONFIDENCE_PERCENT = 95;
  private static final int FEWEST = 3;
  private static final int MOST_FOR_DIXON = 10;

  private AloneRows() {}

  /** Empty of a cell with fewer than three shots. */
  static Optional<AloneView> of(Cell cell) {
    double[] speeds = cell.speedsMps();
    if (speeds.length < FEWEST) {
      return Optional.empty();
    }
    Grubbs grubbs = Grubbs.test(speeds, ALPHA);
    double[] scores = ModifiedZ.of(speeds);
    List<Integer> byScore = new ArrayList<>();
    for (int i = 0; i < scores.length; i++) {
      if (Math.abs(scores[i]) > ModifiedZ.LIMIT) {
        byScore.add(i);
      }
    }
    List<Integer> byEsd = GeneralizedEsd.test(speeds, speeds.length / 4, ALPHA).outliers();
    return Optional.of(
        new AloneView(
            ids(cell, grubbs.isOutlier() ? List.of(grubbs.index()) : List.of()),
            ids(cell, byEsd),
            ids(cell, byScore),
            dixon(speeds)));
  }

  /** Empty of more values than the table has. */
  private static Optional<Boolean> dixon(double[] speeds) {
    return speeds.length <= MOST_FOR_DIXON
        ? Optional.of(DixonQ.test(speeds, CONFIDENCE_PERCENT).isOutlier())
        : Optional.empty();
  }

  private static List<String> ids(Cell cell, List<Integer> places) {
    return places.stream().map(at -> cell.shots().get(at).id()).toList();
  }
}
