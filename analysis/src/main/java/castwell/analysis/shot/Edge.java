package castwell.analysis.shot;

/**
 * One stamped edge of one gate: a raw fact, never changed.
 *
 * @param number the edge's number in the board's count since it started, from 1
 * @param ticks the board's counter when the edge was stamped, unwrapped to more than 32 bits
 * @param lateTicks the most ticks by which the stamp may be late, at least 0
 */
public record Edge(int number, Gate gate, EdgeKind kind, long ticks, int lateTicks) {}
