package castwell.analysis.numeric;

import java.util.Arrays;

/** A sum of some of many numbers, each so many times. */
public final class Contrast {
  private final int[] at;
  private final double[] by;

  private Contrast(int[] at, double[] by) {
    this.at = at;
    this.by = by;
  }

  /**
   * @param at which numbers
   * @param by how many times each of these
   */
  public static Contrast of(int[] at, double... by) {
    return new Contrast(at.clone(), by.clone());
  }

  public Contrast minus(Contrast other) {
    int own = at.length;
    int[] both = Arrays.copyOf(at, own + other.at.length);
    double[] factors = Arrays.copyOf(by, both.length);
    for (int i = own; i < both.length; i++) {
      both[i] = other.at[i - own];
      factors[i] = -other.by[i - own];
    }
    return new Contrast(both, factors);
  }

  public double of(double[] numbers) {
    double sum = 0;
    for (int i = 0; i < at.length; i++) {
      sum += by[i] * numbers[at[i]];
    }
    return sum;
  }

  /** Its variance, by a covariance matrix of so many rows, told row by row. */
  public double variance(double[] covariance, int rows) {
    double sum = 0;
    for (int i = 0; i < at.length; i++) {
      for (int j = 0; j < at.length; j++) {
        sum += by[i] * by[j] * covariance[at[i] * rows + at[j]];
      }
    }
    return sum;
  }
}
