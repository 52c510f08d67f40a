package castwell.analysis.season;

import java.util.Arrays;

/**
 * The mixed-model equations (Henderson, Biometrics 31 (1975) 423; from memory) at one D and W, but
 * for what A adds. The unknowns are the shared errors of weighing, the arrows' effects, then the
 * states' alpha and e. Bows' days and days are taken out by two rank-one rules, so that no matrix
 * has more rows than there are unknowns.
 */
final class Information {
  private static final int PER_PAIR = 4;

  /** Whole and symmetric. */
  final double[][] matrix;

  final double[] right;
  final double squares;
  final double logDeterminant;

  /**
   * @param d D, W and so on: relative standard deviations, above 0
   */
  Information(Layout layout, Tangent tangent, BlockSums sums, double d, double w) {
    int pairs = layout.pairs();
    double[][] m = new double[pairs][pairs];
    double[] b = sums.pairSum.clone();
    for (int i = 0; i < pairs; i++) {
      m[i][i] = sums.pairWeight[i];
    }
    double w2 = w * w;
    double left = sums.squares;
    double logs = -sums.logWeights;
    double[] q = new double[layout.cells.length];
    for (int j = 0; j < layout.sessions(); j++) {
      double total = 0;
      double weighted = 0;
      for (int k = layout.sessionStart[j]; k < layout.sessionStart[j + 1]; k++) {
        double a = 1 / (1 + w2 * sums.blockWeight[k]);
        int from = layout.blockStart[k];
        int to = layout.blockStart[k + 1];
        takeOut(m, b, layout.pair, sums.weight, from, to, w2 * a, sums.blockSum[k]);
        for (int c = from; c < to; c++) {
          q[c] = a * sums.weight[c];
        }
        total += a * sums.blockWeight[k];
        weighted += a * sums.blockSum[k];
        left -= w2 * a * sums.blockSum[k] * sums.blockSum[k];
        logs -= Math.log(a);
      }
      double v = d * d + layout.sessionU[j] * layout.sessionU[j];
      double g = v / (1 + v * total);
      int from = layout.blockStart[layout.sessionStart[j]];
      int to = layout.blockStart[layout.sessionStart[j + 1]];
      takeOut(m, b, layout.pair, q, from, to, g, weighted);
      left -= g * weighted * weighted;
      logs += Math.log1p(v * total);
    }
    for (int i = 0; i < pairs; i++) {
      for (int o = 0; o < i; o++) {
        m[i][o] = m[o][i];
      }
    }
    squares = left;
    logDeterminant = logs;
    int errors = layout.arrows.errorUKg.length;
    int unknowns = errors + layout.effects + 2 * layout.stateCount();
    matrix = new double[unknowns][unknowns];
    right = new double[unknowns];
    project(layout, tangent, m, b);
  }

  /**
   * Takes g p p' from the upper triangle of m, and g s p from b, with p the weights of these cells
   * at their pairs, which come in rising order.
   */
  private static void takeOut(
      double[][] m, double[] b, int[] pair, double[] p, int from, int to, double g, double s) {
    for (int c = from; c < to; c++) {
      double gp = g * p[c];
      double[] row = m[pair[c]];
      b[pair[c]] -= gp * s;
      for (int o = c; o < to; o++) {
        row[pair[o]] -= gp * p[o];
      }
    }
  }

  /** From pairs to unknowns: each pair depends on four of them at most. */
  private void project(Layout layout, Tangent tangent, double[][] m, double[] b) {
    int pairs = layout.pairs();
    int errors = layout.arrows.errorUKg.length;
    int alphas = errors + layout.effects;
    int es = alphas + layout.stateCount();
    int[] at = new int[PER_PAIR * pairs];
    double[] by = new double[PER_PAIR * pairs];
    for (int i = 0; i < pairs; i++) {
      int error = layout.arrows.errorOfPair[i];
      set(at, by, PER_PAIR * i, alphas + layout.pairState[i], 1);
      set(at, by, PER_PAIR * i + 1, es + layout.pairState[i], tangent.byE[i]);
      set(at, by, PER_PAIR * i + 2, errors + layout.pairEffect[i], 1);
      set(at, by, PER_PAIR * i + 3, Math.max(error, 0), error < 0 ? 0 : -tangent.byMass[i]);
    }
    double[] row = new double[right.length];
    for (int i = 0; i < pairs; i++) {
      Arrays.fill(row, 0);
      for (int t = 0; t < at.length; t++) {
        row[at[t]] += m[i][t / PER_PAIR] * by[t];
      }
      for (int t = PER_PAIR * i; t < PER_PAIR * (i + 1); t++) {
        right[at[t]] += by[t] * b[i];
        add(matrix[at[t]], row, by[t]);
      }
    }
  }

  private static void set(int[] at, double[] by, int place, int unknown, double derivative) {
    at[place] = unknown;
    by[place] = derivative;
  }

  private static void add(double[] to, double[] row, double factor) {
    for (int i = 0; i < to.length; i++) {
      to[i] += factor * row[i];
    }
  }
}
