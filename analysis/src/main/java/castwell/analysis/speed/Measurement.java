package castwell.analysis.speed;

import castwell.analysis.uncertainty.Quantity;
import java.util.Optional;

/**
 * What one passage says, in m/s and m.
 *
 * @param front speed from gate A's front edge to gate B's; empty when one of them is missing or no
 *     time lies between them; negative when B saw it first
 * @param tail speed from gate A's tail to gate B's, likewise
 * @param speed the one to report, always above 0: both together, or the one pair whose order is
 *     right
 * @param length of what went through; empty without a speed, or when no gate saw both its ends
 */
public record Measurement(
    Optional<Quantity> front,
    Optional<Quantity> tail,
    Optional<Quantity> speed,
    Optional<Quantity> length) {}
