package castwell.analysis.verdict;

import java.util.Optional;

/** One way in which a passage can fail to count. */
interface Rule {

  /**
   * Why the passage does not count; empty when this rule has nothing against it, or cannot tell.
   */
  Optional<Reason> judge(Evidence evidence);
}
