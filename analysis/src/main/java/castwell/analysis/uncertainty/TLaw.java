package castwell.analysis.uncertainty;

import org.hipparchus.special.Beta;

/**
 * Student's t with one number of degrees of freedom, for whoever asks it many times: the incomplete
 * beta function by its continued fraction (Lentz; Press et al., Numerical Recipes, 6.4; from
 * memory), with what doesn't change kept. From a thousand degrees of freedom on it is the normal
 * distribution at a value in powers of 1/n (Fisher and Cornish, Technometrics 2 (1960) 209; from
 * memory). Good to 1e-12.
 */
final class TLaw {
  private static final double SEVERAL = 100;
  private static final double MANY = 1000;
  private static final double FAR = 8;
  private static final double ACCURACY = 1e-15;
  private static final double TINY = 1e-300;
  private static final int MOST_TERMS = 20_000;

  private final double n;
  private final double logBeta;

  TLaw(double degreesOfFreedom) {
    n = degreesOfFreedom;
    logBeta = n < SEVERAL ? Beta.logBeta(n / 2, 0.5) : stirling(n / 2);
  }

  /** The log of B(a, 1 / 2), by Stirling's series for the quotient of the two gamma functions. */
  private static double stirling(double a) {
    double r = 1 / (a * a);
    double series = (0.125 - (1.0 / 192 - (1.0 / 640 - 17.0 / 14336 * r) * r) * r) / a;
    return Math.log(Math.PI / a) / 2 + series;
  }

  double density(double t) {
    return Math.exp(-(n + 1) / 2 * Math.log1p(t * t / n) - logBeta) / Math.sqrt(n);
  }

  /** The probability of less than t. */
  double below(double t) {
    if (n >= MANY && Math.abs(t) < FAR) {
      return NormalLaw.below(normal(t));
    }
    double tail = tail(t * t / n) / 2;
    return t < 0 ? tail : 1 - tail;
  }

  /** The standard normal value as probable as t. */
  private double normal(double t) {
    double t2 = t * t;
    double first = (t2 + 1) / 4;
    double second = ((13 * t2 + 8) * t2 + 3) / 96;
    double third = (((35 * t2 + 19) * t2 + 1) * t2 - 15) / 384;
    return t * (1 - (first - (second - third / n) / n) / n);
  }

  /** Of both sides, by t^2 / n: the incomplete beta function I(n / 2, 1 / 2) at 1 / (1 + that). */
  private double tail(double ratio) {
    if (ratio == 0) {
      return 1;
    }
    double a = n / 2;
    double x = 1 / (1 + ratio);
    double front = Math.exp(Math.log(ratio) / 2 - (a + 0.5) * Math.log1p(ratio) - logBeta);
    return x < (a + 1) / (a + 2.5)
        ? front * fraction(a, 0.5, x) / a
        : 1 - front * fraction(0.5, a, ratio / (1 + ratio)) / 0.5;
  }

  private static double fraction(double a, double b, double x) {
    double c = 1;
    double d = 1 / away(1 - (a + b) * x / (a + 1));
    double value = d;
    for (int m = 1; m < MOST_TERMS; m++) {
      double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
      d = 1 / away(1 + even * d);
      c = away(1 + even / c);
      value *= d * c;
      double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
      d = 1 / away(1 + odd * d);
      c = away(1 + odd / c);
      value *= d * c;
      if (Math.abs(d * c - 1) < ACCURACY) {
        break;
      }
    }
    return value;
  }

  /** Lest anything is divided by 0. */
  private static double away(double value) {
    return Math.abs(value) < TINY ? TINY : value;
  }
}
