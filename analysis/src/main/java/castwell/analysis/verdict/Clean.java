package castwell.analysis.verdict;

import java.util.List;

/** The verdict that a passage counts, since no rule objects. */
public record Clean() implements Verdict {
  @Override
  public List<Reason> reasons() {
    return List.of();
  }
}
