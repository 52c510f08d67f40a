package castwell.analysis.setup;

/** A bound of an error, which lies within a range itself. */
final class Bound {
  private Bound() {}

  /**
   * @throws IllegalArgumentException for one below 0, beyond the most or NaN
   */
  static void check(String what, double bound, double most) {
    if (!(bound >= 0 && bound <= most)) {
      throw new IllegalArgumentException(what + " is from 0 to " + most + ", not " + bound);
    }
  }
}
