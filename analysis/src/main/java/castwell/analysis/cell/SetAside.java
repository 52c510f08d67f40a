package castwell.analysis.cell;

/**
 * A shot that doesn't count, and why.
 *
 * @param reason a sentence
 */
public record SetAside(String shotId, String reason) {}
