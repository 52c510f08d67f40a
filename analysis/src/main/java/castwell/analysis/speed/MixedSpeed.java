package castwell.analysis.speed;

/**
 * A speed as a mixture of what fronts tell, what tails do, and both together.
 *
 * @param ownU its own standard uncertainty in m/s, which covers that these may contradict
 * @param lengthM the length that goes with it
 * @param lengthUM what of the length's standard uncertainty comes of not knowing which edges are
 *     the arrow's
 * @param both how much both together weigh in it; the three weights add up to 1
 * @param front how much the fronts alone do
 * @param tail how much the tails alone do
 */
public record MixedSpeed(
    double mps,
    double ownU,
    double lengthM,
    double lengthUM,
    double both,
    double front,
    double tail) {}
