package castwell.capture.view.rack;

import castwell.capture.view.Meaning;

/** What a person decided of a weighing. */
public record WeighingDecided(
    @Meaning("the arrow's name") String name,
    @Meaning("the weighing's number") long id,
    boolean counts) {}
