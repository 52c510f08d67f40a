package castwell.analysis.shot;

/** One light screen: A is nearer the bow, B farther. */
public enum Gate {
  A,
  B
}
