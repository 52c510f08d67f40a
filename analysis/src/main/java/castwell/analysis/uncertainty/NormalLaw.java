package castwell.analysis.uncertainty;

/**
 * The standard normal distribution function by one quotient of polynomials, good to 1e-14 (Hart, as
 * in West, Better approximations to cumulative normal functions, Wilmott, May 2005; from memory).
 */
final class NormalLaw {
  private static final double[] OVER = {
    3.52624965998911e-2,
    0.700383064443688,
    6.37396220353165,
    33.912866078383,
    112.079291497871,
    221.213596169931,
    220.206867912376
  };

  private static final double[] UNDER = {
    8.83883476483184e-2,
    1.75566716318264,
    16.064177579207,
    86.7807322029461,
    296.564248779674,
    637.333633378831,
    793.826512519948,
    440.413735824752
  };

  private static final double FAR = 7;
  private static final int TERMS = 4;
  private static final double ROOT = Math.sqrt(2 * Math.PI);

  private NormalLaw() {}

  /** The probability of less than z. */
  static double below(double z) {
    double x = Math.abs(z);
    double tail = Math.exp(-x * x / 2) * (x < FAR ? at(OVER, x) / at(UNDER, x) : farther(x));
    return z < 0 ? tail : 1 - tail;
  }

  private static double at(double[] polynomial, double x) {
    double sum = 0;
    for (double coefficient : polynomial) {
      sum = sum * x + coefficient;
    }
    return sum;
  }

  /** The tail's continued fraction. */
  private static double farther(double x) {
    double denominator = x + 0.65;
    for (int k = TERMS; k > 0; k--) {
      denominator = x + k / denominator;
    }
    return 1 / (denominator * ROOT);
  }
}
