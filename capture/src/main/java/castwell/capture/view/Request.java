package castwell.capture.view;

/** A shape that somebody sends: what is empty may be left out, and nothing else may be in it. */
public interface Request {}
