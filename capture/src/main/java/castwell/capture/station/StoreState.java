package castwell.capture.station;

import castwell.analysis.wording.Phrase;
import java.time.Instant;
import java.util.Optional;

/**
 * Whether what comes from a station gets onto the disk.
 *
 * @param trouble what keeps it from there; empty when nothing does
 * @param since when that began
 * @param waiting how many passages are kept in memory alone
 * @param full whether there is no room for more, so that the board isn't listened to; it keeps its
 *     last edges until it is
 */
public record StoreState(
    String station, Optional<Phrase> trouble, Instant since, int waiting, boolean full) {}
