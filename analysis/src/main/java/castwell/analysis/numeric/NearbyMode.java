package castwell.analysis.numeric;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * The top of a density close to one whose curvature is taken to hold: by gradients alone, which
 * take a third of the looks that {@link ModeSearch} takes.
 */
public final class NearbyMode {
  /** How far the curvature along an axis may be off. */
  private static final double BENT = 0.01;

  /** How long the last step may be. */
  private static final double CLOSE = 1e-4;

  private static final int MOST_STEPS = 10;

  private final ToDoubleFunction<double[]> logDensity;
  private final double[] place;
  private final double[] gradient;
  private final double[] curvature;

  private NearbyMode(ToDoubleFunction<double[]> logDensity, double[] start) {
    this.logDensity = logDensity;
    place = start.clone();
    gradient = new double[place.length];
    curvature = new double[place.length];
  }

  /** Empty where the curvature doesn't hold to 1 % along each axis. */
  public static Optional<double[]> of(
      ToDoubleFunction<double[]> logDensity, ModeSearch.Mode close) {
    NearbyMode search = new NearbyMode(logDensity, close.place());
    RealMatrix factor = MatrixUtils.createRealMatrix(close.factor());
    RealMatrix covariance = factor.multiplyTransposed(factor);
    RealMatrix precision = MatrixUtils.inverse(covariance);
    for (int k = 0; k < MOST_STEPS; k++) {
      search.look();
      if (!search.isBentAs(precision)) {
        return Optional.empty();
      }
      if (search.go(covariance) < CLOSE) {
        return Optional.of(search.place);
      }
    }
    return Optional.empty();
  }

  /** The gradient and the curvature here, by central differences; the last axis first. */
  private void look() {
    double height = logDensity.applyAsDouble(place);
    for (int i = place.length - 1; i >= 0; i--) {
      double above = height(i, ModeSearch.STEP);
      double below = height(i, -ModeSearch.STEP);
      gradient[i] = (above - below) / (2 * ModeSearch.STEP);
      curvature[i] = (2 * height - above - below) / (ModeSearch.STEP * ModeSearch.STEP);
    }
  }

  private double height(int axis, double by) {
    double[] moved = place.clone();
    moved[axis] += by;
    return logDensity.applyAsDouble(moved);
  }

  private boolean isBentAs(RealMatrix precision) {
    boolean alike = true;
    for (int i = 0; i < place.length; i++) {
      alike &= Math.abs(curvature[i] / precision.getEntry(i, i) - 1) < BENT;
    }
    return alike;
  }

  /** One step; returns its longest side. */
  private double go(RealMatrix covariance) {
    double[] step = covariance.operate(gradient);
    double size = 0;
    for (int i = 0; i < place.length; i++) {
      place[i] += step[i];
      size = Math.max(size, Math.abs(step[i]));
    }
    return size;
  }
}
