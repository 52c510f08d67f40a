package castwell.analysis.bow;

/**
 * The virtual-mass model with its best scale at a given K: v = a f(m), f = (m + K)^-1/2, a = sqrt(2
 * E).
 *
 * @param a the best scale at this K
 * @param ff the sum of n f2
 * @param between the sum of n (mean - a f)2, which is what the curve doesn't explain of the means;
 *     NaN where K isn't above minus the lightest mass
 * @param step the Gauss-Newton step of K
 * @param gg the sum of n g2, with g the derivative of the model by K after a is projected out
 * @param fg the sum of n f times the derivative of the model by K
 */
record Projection(
    double k, double a, double ff, double between, double step, double gg, double fg) {

  static Projection at(Repeats r, double k) {
    int masses = r.masses();
    double ff = 0;
    double fv = 0;
    for (int i = 0; i < masses; i++) {
      double f = 1 / Math.sqrt(r.massKg()[i] + k);
      ff += r.count()[i] * f * f;
      fv += r.count()[i] * f * r.meanMps()[i];
    }
    double a = fv / ff;
    double between = 0;
    double fg = 0;
    for (int i = 0; i < masses; i++) {
      double f = 1 / Math.sqrt(r.massKg()[i] + k);
      double residual = r.meanMps()[i] - a * f;
      between += r.count()[i] * residual * residual;
      fg += r.count()[i] * f * derivative(a, f);
    }
    double gg = 0;
    double gr = 0;
    for (int i = 0; i < masses; i++) {
      double f = 1 / Math.sqrt(r.massKg()[i] + k);
      double g = derivative(a, f) - fg / ff * f;
      gg += r.count()[i] * g * g;
      gr += r.count()[i] * g * (r.meanMps()[i] - a * f);
    }
    return new Projection(k, a, ff, between, gr / gg, gg, fg);
  }

  /** The derivative of a f by K. */
  private static double derivative(double a, double f) {
    return -0.5 * a * f * f * f;
  }

  /** The fit at this K: E = a2 / 2, with the covariance of a and K carried over to E and K. */
  VirtualMassFit fit(Repeats r) {
    double sumSquares = r.withinSumSquares() + between;
    int degreesOfFreedom = r.shots() - 2;
    double s2 = sumSquares / degreesOfFreedom;
    double varK = s2 / gg;
    double covAK = -fg / ff * varK;
    double varA = s2 / ff + fg / ff * fg / ff * varK;
    return new VirtualMassFit(
        a * a / 2, k, a * a * varA, a * covAK, varK, sumSquares, degreesOfFreedom, r);
  }
}
