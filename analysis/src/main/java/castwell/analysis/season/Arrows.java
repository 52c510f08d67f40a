package castwell.analysis.season;

import java.util.Arrays;
import java.util.List;

/** The arrows of a season, and the errors of their weighing. */
final class Arrows {
  /** The mean of the different arrows' masses. */
  final double meanKg;

  /** Each pair's unknown error of weighing, by number; -1 where it needs no unknown of its own. */
  final int[] errorOfPair;

  /**
   * For a pair that alone has its uncertain arrow, the uncertainty of its mass, in kg; else 0.
   * There the error of the mass can't be told from the arrow's effect on the bow, so one unknown
   * does for both.
   */
  final double[] aloneUKg;

  /** The standard uncertainty that each unknown error has, in kg. */
  final double[] errorUKg;

  /**
   * @param pairs a cell of each pair
   */
  Arrows(List<SeasonCell> pairs) {
    Layout.Names names = new Layout.Names();
    int[] arrow = new int[pairs.size()];
    int[] uses = new int[pairs.size()];
    double sum = 0;
    for (int i = 0; i < arrow.length; i++) {
      arrow[i] = names.number(pairs.get(i).arrow());
      if (uses[arrow[i]]++ == 0) {
        sum += pairs.get(i).massKg();
      }
    }
    meanKg = sum / names.size();
    errorOfPair = new int[arrow.length];
    aloneUKg = new double[arrow.length];
    double[] u = new double[arrow.length];
    Layout.Names errors = new Layout.Names();
    for (int i = 0; i < arrow.length; i++) {
      double massU = pairs.get(i).massUKg();
      errorOfPair[i] = -1;
      if (massU > 0 && uses[arrow[i]] == 1) {
        aloneUKg[i] = massU;
      } else if (massU > 0) {
        errorOfPair[i] = errors.number(arrow[i]);
        u[errorOfPair[i]] = massU;
      }
    }
    errorUKg = Arrays.copyOf(u, errors.size());
  }
}
