package castwell.capture.view.rack;

/** A bow or an arrow, by its name alone. */
public record Named(String name) {}
