package castwell.analysis.uncertainty;

/**
 * An interval in the unit of the quantity that it covers; an end that can't be told is infinite.
 *
 * @param high the upper end, at least {@code low}
 */
public record Interval(double low, double high) {

  public boolean contains(double value) {
    return value >= low && value <= high;
  }

  /** The farther end from 0, without its sign. */
  public double largest() {
    return Math.max(Math.abs(low), Math.abs(high));
  }

  public double halfWidth() {
    return (high - low) / 2;
  }
}
