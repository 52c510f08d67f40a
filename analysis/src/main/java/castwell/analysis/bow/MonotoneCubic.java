package castwell.analysis.bow;

/**
 * A smooth curve through points that neither overshoots nor wiggles. It is piecewise cubic, with
 * its slopes limited to the circle of radius 3 (Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980)
 * 238). R's splinefun with method "monoH.FC" gives the same except at the steepest bends, where it
 * lets slopes past that circle, which a later limit may turn into an overshoot.
 */
final class MonotoneCubic {
  private final double[] x;
  private final double[] y;
  private final double[] slope;

  /**
   * @param x the points' x in rising order, at least two
   */
  MonotoneCubic(double[] x, double[] y) {
    this.x = x;
    this.y = y;
    int n = x.length;
    double[] secant = new double[n - 1];
    for (int i = 0; i < n - 1; i++) {
      secant[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    }
    slope = new double[n];
    slope[0] = secant[0];
    slope[n - 1] = secant[n - 2];
    for (int i = 1; i < n - 1; i++) {
      slope[i] = (secant[i - 1] + secant[i]) / 2;
    }
    for (int i = 0; i < n - 1; i++) {
      limit(secant[i], i);
    }
  }

  private void limit(double secant, int i) {
    if (secant == 0) {
      slope[i] = 0;
      slope[i + 1] = 0;
      return;
    }
    double a = slope[i] / secant;
    double b = slope[i + 1] / secant;
    if (a < 0 || b < 0) {
      // The data turn here, and no slope may carry past the turn.
      slope[i] = a < 0 ? 0 : slope[i];
      slope[i + 1] = b < 0 ? 0 : slope[i + 1];
      a = Math.max(0, a);
      b = Math.max(0, b);
    }
    double length = Math.hypot(a, b);
    if (length > 3) {
      slope[i] = 3 / length * a * secant;
      slope[i + 1] = 3 / length * b * secant;
    }
  }

  /** The area under the whole curve; it is exact, since each piece is a cubic. */
  double integral() {
    double sum = 0;
    for (int i = 0; i < x.length - 1; i++) {
      double h = x[i + 1] - x[i];
      sum += h * (y[i] + y[i + 1]) / 2 + h * h * (slope[i] - slope[i + 1]) / 12;
    }
    return sum;
  }

  /** The curve's slope at a place between its ends. */
  double slopeAt(double at) {
    int i = 0;
    while (i < x.length - 2 && at > x[i + 1]) {
      i++;
    }
    double h = x[i + 1] - x[i];
    double t = (at - x[i]) / h;
    return 6 * t * (1 - t) * (y[i + 1] - y[i]) / h
        + (1 - t) * (1 - 3 * t) * slope[i]
        + t * (3 * t - 2) * slope[i + 1];
  }
}
