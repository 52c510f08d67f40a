package castwell.analysis.outlier;

import castwell.analysis.statistic.Mean;

/**
 * What is left of one cell while strays are removed from it. Its sums are made anew only when it
 * loses a shot, so that a session's other cells needn't be looked at again for each stray.
 */
final class CellLeft {
  private final double[] values;
  private final boolean[] kept;
  private final boolean[] out;
  private final int quota;
  private double[] left;
  private double mean;
  private double squares;
  private int farthest;

  /**
   * @param kept which values may never be removed
   * @param quota how many of the others may be removed
   */
  CellLeft(double[] values, boolean[] kept, int quota) {
    this.values = values;
    this.kept = kept;
    this.out = new boolean[values.length];
    this.quota = quota;
    addUp(values.length);
  }

  void remove(int index) {
    out[index] = true;
    addUp(left.length - 1);
  }

  private void addUp(int count) {
    left = new double[count];
    int next = 0;
    for (int i = 0; i < values.length; i++) {
      if (!out[i]) {
        left[next++] = values[i];
      }
    }
    mean = Mean.of(left);
    squares = 0;
    farthest = -1;
    for (int i = 0; i < values.length; i++) {
      if (!out[i]) {
        squares += deviation(i) * deviation(i);
        boolean farther = farthest < 0 || Math.abs(deviation(i)) > Math.abs(deviation(farthest));
        farthest = mayGo(i) && farther ? i : farthest;
      }
    }
  }

  boolean mayGo(int index) {
    return !kept[index] && values.length - left.length < quota;
  }

  boolean isOut(int index) {
    return out[index];
  }

  /**
   * The index of the value farthest from the mean among those that may be removed; -1 without any.
   */
  int farthest() {
    return farthest;
  }

  double deviation(int index) {
    return values[index] - mean;
  }

  double[] left() {
    return left;
  }

  /** Sum of the squared distances from the mean. */
  double squares() {
    return squares;
  }
}
