package castwell.analysis.uncertainty;

/**
 * From low to high, in the unit of what it covers; an end that can't be told is infinite.
 *
 * @param high at least {@code low}
 */
public record Interval(double low, double high) {

  public boolean contains(double value) {
    return value >= low && value <= high;
  }

  public double halfWidth() {
    return (high - low) / 2;
  }
}
