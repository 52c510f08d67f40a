package castwell.analysis.reading;

/**
 * Something known beforehand of this arrow or its cell.
 *
 * @param value in SI units
 * @param u its standard uncertainty in the same unit, at least 0
 */
public record Known(double value, double u) {

  /**
   * @throws IllegalArgumentException when the value isn't finite or the uncertainty is below 0
   */
  public Known {
    if (!Double.isFinite(value) || !(u >= 0 && Double.isFinite(u))) {
      throw new IllegalArgumentException(
          "what is known is a finite value with an uncertainty of at least 0, not "
              + value
              + " ± "
              + u);
    }
  }
}
