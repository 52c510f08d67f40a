package castwell.analysis.setup;

import castwell.analysis.uncertainty.Source;

/**
 * How far the arrows' path may be from the line through the gates. An arrow oblique by t goes S /
 * cos t from gate to gate, so its speed always reads low, by t^2 / 2.
 *
 * <p>For t rectangular from 0 to T the mean of t^2 / 2 is T^2 / 6, and its root mean square T^2 /
 * sqrt 20. The speed isn't corrected by the former: nobody measured the angle, and a speed is what
 * the ticks say. The latter is its standard uncertainty, and holds what isn't corrected.
 *
 * @param greatestDegrees T, in degrees
 */
public record ObliquePath(double greatestDegrees) {
  static final Source SOURCE = Source.common("oblique path");

  /** Up to here the next term of the series adds less than a thirtieth. */
  private static final double MOST = 15;

  /**
   * @throws IllegalArgumentException for an angle below 0 or beyond 15 degrees
   */
  public ObliquePath {
    Bound.check("the path's angle in degrees", greatestDegrees, MOST);
  }

  double relativeU() {
    double t = Math.toRadians(greatestDegrees);
    return t * t / Math.sqrt(20);
  }
}
