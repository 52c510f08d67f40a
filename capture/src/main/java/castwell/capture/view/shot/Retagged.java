package castwell.capture.view.shot;

/** How many shots were retagged. */
public record Retagged(int shots) {}
