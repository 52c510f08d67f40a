package castwell.analysis.speed;

import castwell.analysis.uncertainty.Quantity;
import java.util.Optional;

/**
 * The speeds, in m/s, and the length, in m, that one passage gives.
 *
 * @param front the speed from gate A's front to gate B's front; empty when one of them is missing
 *     or no time lies between them; negative when B saw the front first
 * @param tail the speed from gate A's tail to gate B's tail; empty or negative likewise
 * @param speed the speed to report, always above 0: the mean of both, or that of the one end that
 *     passed the gates in the right order; empty without such an end
 * @param length the length of what went through; empty without a speed, or when no gate saw both
 *     its ends
 */
public record Measurement(
    Optional<Quantity> front,
    Optional<Quantity> tail,
    Optional<Quantity> speed,
    Optional<Quantity> length) {}
