package castwell.capture.measure;

import java.util.Optional;

/**
 * The catalogue's entry on a measure.
 *
 * @param told what the measure is, for readers of a table
 * @param number its scale and limits; empty for a measure in words
 * @param isToldOfRework whether the report on a rework mentions that it changed
 */
public record Entry(String told, Optional<Number> number, boolean isToldOfRework) {

  /**
   * A measure that is a number.
   *
   * @param least the smallest value in the limits' unit; one beyond the limits is a slip of the pen
   * @param limitsUnit the limits' unit, by the ending that headings have for it
   */
  public record Number(Scale scale, double least, double most, String limitsUnit) {
    /** An SI value in the limits' unit. */
    public double inLimitsUnit(double si) {
      return si / scale.si(limitsUnit);
    }
  }

  static Entry measured(Scale scale, double least, double most, String limitsUnit, String told) {
    return new Entry(told, Optional.of(new Number(scale, least, most, limitsUnit)), false);
  }

  static Entry words(String told) {
    return new Entry(told, Optional.empty(), false);
  }

  Entry toldOfRework() {
    return new Entry(told, number, true);
  }
}
