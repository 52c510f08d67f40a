package castwell.capture.station;

import castwell.analysis.shot.Passage;
import castwell.capture.clock.MeasuredRates;
import castwell.capture.store.Board;
import castwell.capture.store.RawFacts.Timing;
import java.time.Instant;

/**
 * A passage as it leaves a station, on its way to the store.
 *
 * @param firstTicks full ticks of its first edge; where none arrived, of what came next, or 0
 * @param fired when its first edge was stamped
 * @param rates how fast its board's counter ran, as it was known then
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
