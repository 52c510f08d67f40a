package castwell.analysis.season;

import castwell.analysis.bow.JointRegion;
import castwell.analysis.bow.JointRegion.Corner;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * The region of E and K that a season allows a bow state together: an ellipse of (alpha, e), in
 * which the model is nearly straight, with the mixture's covariance and radius^2 = 2 F(2, degrees),
 * carried over to E and K.
 */
final class EnergyRegion {
  private static final int CORNERS = 120;
  private static final double HEAVIEST_ARROWS = 100;

  private final Season season;
  private final double meanKg;
  private final int alphaAt;
  private final int eAt;

  EnergyRegion(Season season, double meanKg, int alphaAt, int eAt) {
    this.season = season;
    this.meanKg = meanKg;
    this.alphaAt = alphaAt;
    this.eAt = eAt;
  }

  /**
   * @param degrees degrees of freedom of the less certain of the two
   */
  JointRegion region(double degrees, double coverage) {
    double alpha = season.centre()[alphaAt];
    double e = season.centre()[eAt];
    double ofE = covariance(eAt, eAt);
    double slope = covariance(alphaAt, eAt) / ofE;
    double rest = Math.sqrt(covariance(alphaAt, alphaAt) - slope * slope * ofE);
    double radius =
        Math.sqrt(2 * new FDistribution(2, degrees).inverseCumulativeProbability(coverage));
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
