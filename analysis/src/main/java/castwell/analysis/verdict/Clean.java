package castwell.analysis.verdict;

import java.util.List;

/** No rule objects: it counts. */
public record Clean() implements Verdict {
  @Override
  public List<Reason> reasons() {
    return List.of();
  }
}
