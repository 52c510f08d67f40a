package castwell.capture.view.station;

import castwell.capture.view.Meaning;
import java.time.Instant;
import java.util.Optional;

/** Whether a station's passages reach the disk. */
public record StoreView(
    @Meaning("where the gates stand") String station,
    @Meaning("what keeps them from there; null when nothing does") Optional<String> trouble,
    @Meaning("since when, UTC") Instant since,
    @Meaning("how many passages are kept in memory alone") int waiting,
    @Meaning("whether there is no room for more") boolean full) {}
