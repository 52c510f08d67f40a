package castwell.capture.station;

import castwell.analysis.shot.Passage;
import castwell.capture.clock.BoardClock;
import castwell.capture.store.Board;
import castwell.capture.store.RawFacts.Timing;
import java.time.Instant;

/**
 * A passage as it leaves a station, on its way to the store.
 *
 * @param firstTicks full ticks of its first edge; where none arrived, of what came next, or 0
 * @param fired when its first edge was stamped
 * @param clock the board's, for the tick rate
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
    BoardClock clock,
    double airDensity) {}
