package castwell.capture.station;

import castwell.analysis.shot.Passage;
import castwell.capture.clock.MeasuredRates;
import castwell.capture.store.Board;
import castwell.capture.store.RawFacts.Timing;
import java.time.Instant;

/**
 * A passage as it leaves a station, on its way to the store.
 *
 * @param firstTicks the full ticks of its first edge; where none arrived, those of what was stamped
 *     next, or 0
 * @param fired when its first edge was stamped
 * @param rates how fast its board's counter ran, as far as that was known then
 * @param airDensity the air's density, in kg/m3
 */
public record ClosedPassage(
    String station,
    Board board,
    int boot,
    Listening listening,
    Timing timing,
    Passage passage,
    long firstTicks,
    Instant fired,
    MeasuredRates rates,
    double airDensity) {}
