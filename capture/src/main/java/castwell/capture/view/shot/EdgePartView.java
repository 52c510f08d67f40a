package castwell.capture.view.shot;

import castwell.analysis.reading.Part;
import castwell.capture.view.Meaning;

/** An edge, and its part in the story. */
public record EdgePartView(
    @Meaning("its number in its boot") int edge,
    @Meaning("A nearer the bow, B farther") String gate,
    @Meaning("B blocked, C clear, G two edges in one stamp") String kind,
    @Meaning(value = "since the first edge", unit = "microsecond") double micros,
    @Meaning(
            "front or tail of the arrow; flutter, bounce or light at or through it; lamp, other or"
                + " unknown where it isn't the arrow's")
        Part part) {}
