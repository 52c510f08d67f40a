package castwell.capture.view.station;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Map;

/** A station: its board, its place on the disk, and what was wrong on the wire since the start. */
public record StationView(
    @JsonUnwrapped LinkView link,
    StoreView store,
    @Meaning("how often each fault was counted since the start, by its name")
        Map<String, Long> faults) {}
