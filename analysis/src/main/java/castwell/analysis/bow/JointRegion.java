package castwell.analysis.bow;

import castwell.analysis.uncertainty.Interval;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * The region of E and K that the shots allow together: all pairs whose sum of squares is at most S
 * (1 + p / (n - p) F), p = 2 (Beale, J. R. Stat. Soc. B 22 (1960) 41; Bates and Watts, Nonlinear
 * Regression Analysis (1988), 6.1). The region isn't an ellipse, since it follows the model's own
 * curvature.
 *
 * @param corners the outline's corners in order, the last joined to the first; a single point
 *     repeated where the fit has no residuals
 * @param isOpen whether the region has no upper end, since the shots don't rule out any K however
 *     heavy; the outline is then cut where K is 100 times the heaviest arrow
 */
public record JointRegion(List<Corner> corners, boolean isOpen) {
  private static final int HEAVIEST_ARROWS = 100;
  private static final int SLICES = 60;
  private static final int HALVINGS = 60;

  public record Corner(double energyJ, double virtualMassKg) {}

  public JointRegion {
    corners = List.copyOf(corners);
  }

  /**
   * The region with this probability of holding the true E and K.
   *
   * @param coverage a probability between 0 and 1, commonly 0.95
   */
  public static JointRegion of(VirtualMassFit fit, double coverage) {
    Repeats repeats = fit.repeats();
    double f = new FDistribution(2, fit.degreesOfFreedom()).inverseCumulativeProbability(coverage);
    double most =
        fit.sumSquares() * (1 + 2 * f / fit.degreesOfFreedom()) - repeats.withinSumSquares();
    Interval ks = new Interval(end(repeats, fit, most, -1), end(repeats, fit, most, 1));
    List<Corner> high = new ArrayList<>();
    List<Corner> low = new ArrayList<>();
    for (int i = 0; i <= SLICES; i++) {
      // The steps are denser towards the ends, where the outline turns round.
      double k = ks.low() + (ks.high() - ks.low()) * (1 - Math.cos(Math.PI * i / SLICES)) / 2;
      Projection at = Projection.at(repeats, k);
      double reach = Math.sqrt(Math.max(0, most - at.between()) / at.ff());
      high.add(corner(at.a() + reach, k));
      low.add(0, corner(Math.max(0, at.a() - reach), k));
    }
    high.addAll(low);
    return new JointRegion(high, ks.high() >= heaviest(repeats));
  }

  private static Corner corner(double a, double k) {
    return new Corner(a * a / 2, k);
  }

  private static double heaviest(Repeats repeats) {
    return HEAVIEST_ARROWS * repeats.massKg()[repeats.masses() - 1];
  }

  /**
   * The farthest K of the region to one side, found by doubling and halving, never past its bound.
   */
  private static double end(Repeats repeats, VirtualMassFit fit, double most, int side) {
    double inside = fit.virtualMassKg();
    double bound = side < 0 ? -repeats.massKg()[0] : Math.max(inside, heaviest(repeats));
    double reach = Math.max(fit.virtualMassSe(), 1e-12);
    double outside = inside;
    while (outside != bound) {
      outside = side < 0 ? Math.max(bound, inside - reach) : Math.min(bound, inside + reach);
      if (!(Projection.at(repeats, outside).between() <= most)) {
        break;
      }
      inside = outside;
      reach *= 2;
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (inside + outside) / 2;
      if (Projection.at(repeats, middle).between() <= most) {
        inside = middle;
      } else {
        outside = middle;
      }
    }
    return inside;
  }
}
