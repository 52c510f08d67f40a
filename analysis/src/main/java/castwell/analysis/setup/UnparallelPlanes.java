package castwell.analysis.setup;

import castwell.analysis.uncertainty.Source;

/**
 * How far the gates' planes of light may be from parallel. Where an arrow goes through them
 * elsewhere than they were measured, it finds another spacing.
 *
 * @param outOfParallelM by how much their distance may differ from the one end of their height to
 *     the other
 * @param offMeasuredM how far from the place of measuring an arrow may go through
 */
public record UnparallelPlanes(double outOfParallelM, double offMeasuredM) {
  static final Source SOURCE = Source.common("gates out of parallel");

  /** The height of a gate, from its emitters to its photodiodes. */
  public static final double HEIGHT_M = 0.6;

  /**
   * @throws IllegalArgumentException when a length is out of its range
   */
  public UnparallelPlanes {
    Bound.check("the gates' being out of parallel", outOfParallelM, HEIGHT_M);
    Bound.check("the arrow's distance from where the gates were measured", offMeasuredM, HEIGHT_M);
  }

  /** Both have either sign; the product of two rectangular ones has a third of their product. */
  double standardUncertaintyM() {
    return outOfParallelM / HEIGHT_M * offMeasuredM / 3;
  }
}
