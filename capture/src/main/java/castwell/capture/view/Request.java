package castwell.capture.view;

/**
 * A shape that somebody sends. Components that are empty may be left out, and there may be no
 * others.
 */
public interface Request {}
