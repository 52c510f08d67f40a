package castwell.capture.station;

import castwell.analysis.wording.Phrase;
import java.time.Instant;
import java.util.Optional;

/**
 * Whether what comes from a station gets onto the disk.
 *
 * @param trouble what keeps it off the disk; empty when nothing does
 * @param since when this state began
 * @param waiting how many passages are kept in memory alone
 * @param full whether memory takes no more, so that the board isn't listened to; the board keeps
 *     its last edges meanwhile
 */
public record StoreState(
    String station, Optional<Phrase> trouble, Instant since, int waiting, boolean full) {}
