package castwell.analysis.bow;

import castwell.analysis.uncertainty.Interval;
import java.util.OptionalDouble;

/**
 * The least arrow mass, in kg, with which a bow reaches a target. Its interval is found by inverse
 * estimation, as for calibrations (Draper and Smith, Applied Regression Analysis; from memory): it
 * holds each mass at which the interval of what the bow gives holds the target. So it needn't be
 * symmetric, and may be open.
 *
 * @param massKg the least mass; empty where no arrow reaches the target
 * @param intervalKg every mass at which what the bow gives can't be told from the target; its upper
 *     end is infinite where even the heaviest arrow can't be shown to reach it, and so is its lower
 *     end where none may
 */
public record Reach(OptionalDouble massKg, Interval intervalKg) {}
