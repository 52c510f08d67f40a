package castwell.capture.view.rack;

import castwell.capture.view.Meaning;

/** A decision on whether a weighing counts. */
public record WeighingDecided(
    @Meaning("the arrow's name") String name,
    @Meaning("the weighing's number") long id,
    boolean counts) {}
