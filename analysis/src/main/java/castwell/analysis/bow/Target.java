package castwell.analysis.bow;

import castwell.analysis.uncertainty.Quantity;

/**
 * What an arrow should carry. When a target is taken from an arrow that has served well, momentum
 * is the stricter target for a bow that would shoot a lighter arrow, and energy for one that needs
 * a heavier arrow, since momentum p and energy p2 / (2 m) ask for the same at that arrow's mass
 * alone.
 */
public sealed interface Target {

  /** The amount that the arrow should carry. */
  Quantity wanted();

  /** A target in J. */
  record KineticEnergy(Quantity wanted) implements Target {}

  /** A target in kg m/s. */
  record Momentum(Quantity wanted) implements Target {}
}
