package castwell.capture.view.shot;

/** How many shots were tagged anew. */
public record Retagged(int shots) {}
