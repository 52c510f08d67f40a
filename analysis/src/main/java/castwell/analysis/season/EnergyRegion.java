package castwell.analysis.season;

import castwell.analysis.bow.JointRegion;
import castwell.analysis.bow.JointRegion.Corner;
import java.util.ArrayList;
import java.util.List;

/**
 * The region of E and K that a season allows a bow state together: an ellipse of (alpha, e), in
 * which the model is nearly straight, in the shape of the covariance over all places of the grid,
 * and as large as their mixture of normal distributions wants it; carried over to E and K.
 */
final class EnergyRegion {
  private static final int CORNERS = 120;
  private static final int DIRECTIONS = 16;
  private static final int HALVINGS = 50;
  private static final double FARTHEST = 30;
  private static final double HEAVIEST_ARROWS = 100;

  private final Season season;
  private final double meanKg;
  private final int alphaAt;
  private final int eAt;
  private final double ofAlpha;
  private final double ofE;
  private final double ofBoth;

  EnergyRegion(Season season, double meanKg, int alphaAt, int eAt) {
    this.season = season;
    this.meanKg = meanKg;
    this.alphaAt = alphaAt;
    this.eAt = eAt;
    ofAlpha = covariance(alphaAt, alphaAt);
    ofE = covariance(eAt, eAt);
    ofBoth = covariance(alphaAt, eAt);
  }

  JointRegion region(double coverage) {
    double alpha = season.centre()[alphaAt];
    double e = season.centre()[eAt];
    double slope = ofBoth / ofE;
    double rest = Math.sqrt(ofAlpha - slope * ofBoth);
    double radius = radius(coverage);
    List<Corner> corners = new ArrayList<>();
    double least = 1 / (1 + HEAVIEST_ARROWS);
    for (int i = 0; i < CORNERS; i++) {
      double angle = 2 * Math.PI * i / CORNERS;
      double away = radius * Math.sqrt(ofE) * Math.cos(angle);
      double a = alpha + slope * away + radius * rest * Math.sin(angle);
      corners.add(corner(a, Math.max(least, e + away)));
    }
    return new JointRegion(corners, e - radius * Math.sqrt(ofE) <= least);
  }

  private Corner corner(double alpha, double e) {
    return new Corner(meanKg * Math.exp(2 * alpha) / (2 * e), meanKg * (1 / e - 1));
  }

  /** In standard deviations of the whole. */
  private double radius(double coverage) {
    double low = 0;
    double high = FARTHEST;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (within(middle * middle) < coverage) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /**
   * The probability of a squared distance up to this: in a direction in which a place's covariance
   * is q times that of the whole, the squared distance over q is chi-square with 2 degrees of
   * freedom.
   */
  private double within(double square) {
    double determinant = ofAlpha * ofE - ofBoth * ofBoth;
    int rows = season.centre().length;
    double sum = 0;
    for (int g = 0; g < season.grid().size(); g++) {
      double[] v = season.covariance(g);
      double a = v[alphaAt * rows + alphaAt];
      double e = v[eAt * rows + eAt];
      double both = v[alphaAt * rows + eAt];
      double half = (ofE * a + ofAlpha * e - 2 * ofBoth * both) / determinant / 2;
      double product = (a * e - both * both) / determinant;
      double apart = Math.sqrt(Math.max(0, half * half - product));
      for (int d = 0; d < DIRECTIONS; d++) {
        double q = half + apart * Math.cos(2 * Math.PI * (d + 0.5) / DIRECTIONS);
        sum += season.grid().weights()[g] * -Math.expm1(-square / (2 * q)) / DIRECTIONS;
      }
    }
    return sum;
  }

  /** Over all places of the grid: within each, and between them. */
  private double covariance(int p, int q) {
    double[] centre = season.centre();
    double sum = 0;
    for (int g = 0; g < season.grid().size(); g++) {
      double[] beta = season.beta(g);
      double between = (beta[p] - centre[p]) * (beta[q] - centre[q]);
      double within = season.covariance(g)[p * centre.length + q];
      sum += season.grid().weights()[g] * (within + between);
    }
    return sum;
  }
}
