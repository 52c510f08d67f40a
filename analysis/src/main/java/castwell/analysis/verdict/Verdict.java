package castwell.analysis.verdict;

import java.util.List;

/** Whether one passage, looked at alone, counts. */
public sealed interface Verdict permits Clean, Misread {

  /** Why it does not count, the most telling first; empty when it counts. */
  List<Reason> reasons();

  default boolean counts() {
    return reasons().isEmpty();
  }
}
