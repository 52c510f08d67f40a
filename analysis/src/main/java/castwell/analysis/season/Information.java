package castwell.analysis.season;

import java.util.Arrays;

/**
 * The mixed-model equations (Henderson, Biometrics 31 (1975) 423; from memory) at one D and W, but
 * for what A adds, in {@link Tangent}'s unknowns. Bows' days and days are taken out by two rank-one
 * rules, so that no matrix has more rows than there are unknowns.
 */
final class Information {
  /** Whole and symmetric. */
  final double[][] matrix;

  final double[] right;
  final double squares;
  final double logDeterminant;

  /** Weights of cells, and by session their sums, once bows' days are taken out. */
  final double[] cellWeight;

  final double[] sessionWeight;
  final double[] sessionSum;

  /** The variance of each session's day, were all else known. */
  final double[] dayVariance;

  /**
   * @param d D, W and so on: relative standard deviations, above 0
   */
  Information(Layout layout, Tangent tangent, BlockSums sums, double d, double w) {
    int pairs = layout.pairs();
    int rows = pairs + layout.covariates.size();
    double[][] m = new double[rows][rows];
    double[] b = Arrays.copyOf(sums.pairSum, rows);
    for (int i = 0; i < pairs; i++) {
      m[i][i] = sums.pairWeight[i];
    }
    double w2 = w * w;
    double left = sums.squares;
    double logs = -sums.logWeights;
    cellWeight = new double[layout.cells.length];
    sessionWeight = new double[layout.sessions()];
    sessionSum = new double[layout.sessions()];
    dayVariance = new double[layout.sessions()];
    for (int j = 0; j < layout.sessions(); j++) {
      double total = 0;
      double weighted = 0;
      for (int k = layout.sessionStart[j]; k < layout.sessionStart[j + 1]; k++) {
        double a = 1 / (1 + w2 * sums.blockWeight[k]);
        int from = layout.blockStart[k];
        int to = layout.blockStart[k + 1];
        takeOut(m, b, layout.pair, sums.weight, from, to, w2 * a, sums.blockSum[k]);
        for (int c = from; c < to; c++) {
          cellWeight[c] = a * sums.weight[c];
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
      takeOut(m, b, layout.pair, cellWeight, from, to, g, weighted);
      sessionWeight[j] = total;
      sessionSum[j] = weighted;
      dayVariance[j] = g;
      addConditions(m, b, layout, j, from, to);
      left -= g * weighted * weighted;
      logs += Math.log1p(v * total);
    }
    for (int i = 0; i < rows; i++) {
      for (int o = 0; o < i; o++) {
        m[i][o] = m[o][i];
      }
    }
    squares = left;
    logDeterminant = logs;
    matrix = new double[tangent.unknowns][tangent.unknowns];
    right = new double[tangent.unknowns];
    project(tangent, m, b);
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

  /** From pairs and conditions to unknowns. */
  private void project(Tangent tangent, double[][] m, double[] b) {
    int[] at = tangent.at;
    double[] by = tangent.by;
    double[] row = new double[right.length];
    for (int i = 0; i < b.length; i++) {
      Arrays.fill(row, 0);
      for (int t = 0; t < at.length; t++) {
        row[at[t]] += m[i][t / Tangent.DEPENDS] * by[t];
      }
      for (int t = Tangent.DEPENDS * i; t < Tangent.DEPENDS * (i + 1); t++) {
        right[at[t]] += by[t] * b[i];
        add(matrix[at[t]], row, by[t]);
      }
    }
  }

  /**
   * What a session tells of the conditions, which move all its cells alike: its sums, of which the
   * day has left a share.
   */
  private void addConditions(
      double[][] m, double[] b, Layout layout, int session, int from, int to) {
    double[] z = layout.z[session];
    double left = 1 - dayVariance[session] * sessionWeight[session];
    for (int v = 0; v < z.length; v++) {
      int row = layout.pairs() + v;
      double share = z[v] * left;
      b[row] += share * sessionSum[session];
      for (int c = from; c < to; c++) {
        m[layout.pair[c]][row] += share * cellWeight[c];
      }
      for (int o = v; o < z.length; o++) {
        m[row][layout.pairs() + o] += share * z[o] * sessionWeight[session];
      }
    }
  }

  private static void add(double[] to, double[] row, double factor) {
    for (int i = 0; i < to.length; i++) {
      to[i] += factor * row[i];
    }
  }
}
