package castwell.analysis.gates;

import java.util.List;

/**
 * Lengths seen against lengths known, by weighted least squares: seen = b (known + W) with what was
 * believed of W as one more observation, so that one point is enough (Sivia, Data Analysis, section
 * 3.5 on a prior as a datum; from memory). Variances and the covariance are those of the inverse
 * normal matrix.
 *
 * @param slope b, a pure number
 * @param offset b W, in metres
 */
record LengthLine(double slope, double offset, double slopeVar, double offsetVar, double cov) {

  /** The mean length seen of one arrow, and the variance of what it is off the line by, in m2. */
  record Point(double knownM, double seenM, double variance) {}

  /**
   * @param points at least one, of variances above 0
   * @param widthUM the standard uncertainty of W, above 0
   */
  static LengthLine through(List<Point> points, double widthM, double widthUM) {
    double xx = widthM * widthM / (widthUM * widthUM);
    double x = -widthM / (widthUM * widthUM);
    double one = 1 / (widthUM * widthUM);
    double xy = 0;
    double y = 0;
    for (Point point : points) {
      double weight = 1 / point.variance();
      xx += weight * point.knownM() * point.knownM();
      x += weight * point.knownM();
      one += weight;
      xy += weight * point.knownM() * point.seenM();
      y += weight * point.seenM();
    }
    double determinant = xx * one - x * x;
    return new LengthLine(
        (one * xy - x * y) / determinant,
        (xx * y - x * xy) / determinant,
        one / determinant,
        xx / determinant,
        -x / determinant);
  }

  double slopeU() {
    return Math.sqrt(slopeVar);
  }

  /** W, how much longer the arrows were seen than they are. */
  double widthM() {
    return offset / slope;
  }

  double widthU() {
    double width = widthM();
    return Math.sqrt(offsetVar - 2 * width * cov + width * width * slopeVar) / slope;
  }
}
