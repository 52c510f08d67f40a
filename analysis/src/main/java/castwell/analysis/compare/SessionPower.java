package castwell.analysis.compare;

import castwell.analysis.season.VarianceGrid;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How likely a change will be told, as far as the season knows how days differ.
 *
 * @param grid what it knows
 * @param shotSd relative standard deviation of one shot
 * @param setUpU relative standard uncertainty of a session's own set-up
 * @param alpha how often a change may be told where there is none
 */
public record SessionPower(VarianceGrid grid, double shotSd, double setUpU, double alpha) {
  private static final NormalDistribution NORMAL = new NormalDistribution();
  private static final double ACCURACY = 1e-12;
  private static final int MOST_SESSIONS = 8;
  private static final int MOST_SHOTS = 10;
  private static final int FEWEST_SHOTS = 3;

  /**
   * The chance that a change of the log speed is told, of either sign.
   *
   * @param change not 0: 0.015 is 1.5 %
   */
  public double of(SessionDesign design, double change) {
    double half = halfWidth(design);
    double size = Math.abs(change);
    return mean(
        design,
        sd ->
            NORMAL.cumulativeProbability((size - half) / sd)
                + NORMAL.cumulativeProbability((-size - half) / sd));
  }

  /**
   * About half the width of the interval that the design will give: of normal distributions with
   * the grid's variances, which draw together as the design's own sessions tell them better.
   */
  public double halfWidth(SessionDesign design) {
    double variance = mean(design, sd -> sd * sd);
    double spread = mean(design, sd -> (sd * sd - variance) * (sd * sd - variance));
    double known = 2 * variance * variance;
    double told = (design.before() + design.after() - 2) * Math.max(1, design.controls()) * spread;
    double drawn = Math.sqrt(known / (known + told));
    double half = 0;
    double step;
    do {
      // Newton's steps; what is left out is convex, so they never go too far.
      double at = half;
      double out =
          mean(design, sd -> 2 * NORMAL.cumulativeProbability(-at / of(sd, variance, drawn)));
      double density =
          mean(
              design,
              sd -> 2 * NORMAL.density(at / of(sd, variance, drawn)) / of(sd, variance, drawn));
      step = (out - alpha) / density;
      half += step;
    } while (step > ACCURACY * half);
    return half;
  }

  private static double of(double sd, double variance, double drawn) {
    return Math.sqrt(variance + (sd * sd - variance) * drawn);
  }

  /** The half width that no number of shots gets under. */
  public double floor(SessionDesign design) {
    return new SessionPower(grid, 0, setUpU, alpha).halfWidth(design);
  }

  /**
   * The design that takes the fewest sessions, and of those the fewest shots, to tell a change with
   * such a chance; empty where eight sessions before and after and ten shots of a cell won't do.
   *
   * @param arrows how many different ones there are
   * @param mostControls how many bows could be shot along
   */
  public Optional<SessionDesign> cheapest(
      double change, double chance, int arrows, int mostControls) {
    for (int sessions = 1; sessions <= MOST_SESSIONS; sessions++) {
      Optional<SessionDesign> best = Optional.empty();
      for (int controls = 0; controls <= mostControls; controls++) {
        for (int shots = FEWEST_SHOTS; shots <= MOST_SHOTS; shots++) {
          SessionDesign design = new SessionDesign(sessions, sessions, controls, arrows, shots);
          boolean isLess = best.isEmpty() || design.total() < best.get().total();
          if (isLess && of(design, change) >= chance) {
            best = Optional.of(design);
          }
        }
      }
      if (best.isPresent()) {
        return best;
      }
    }
    return Optional.empty();
  }

  /**
   * How many sessions after the rework, no fewer than there were, tell a change with such a chance,
   * those before being what they are; empty where eight more won't do.
   *
   * @param soFar what was shot
   */
  public OptionalInt sessionsAfter(SessionDesign soFar, double change, double chance) {
    return IntStream.rangeClosed(soFar.after(), soFar.after() + MOST_SESSIONS)
        .filter(after -> of(soFar.withAfter(after), change) >= chance)
        .findFirst();
  }

  private double mean(SessionDesign design, DoubleUnaryOperator f) {
    double sum = 0;
    for (int g = 0; g < grid.size(); g++) {
      double sd = design.sd(grid.day(g), grid.bowDay(g), shotSd, setUpU);
      sum += grid.weights()[g] * f.applyAsDouble(sd);
    }
    return sum;
  }
}
