package castwell.capture.measure;

import java.util.Optional;

/**
 * What the catalogue says of a measure.
 *
 * @param told what it is, to whoever reads a table of them
 * @param number empty of what is told in words
 * @param isToldOfRework whether a report on a rework tells that it changed
 */
public record Entry(String told, Optional<Number> number, boolean isToldOfRework) {

  /**
   * A measure that is a number.
   *
   * @param least in the limits' unit; what lies outside is a slip of the pen
   * @param limitsUnit by its ending
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
