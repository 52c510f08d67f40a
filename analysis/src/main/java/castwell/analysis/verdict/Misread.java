package castwell.analysis.verdict;

import java.util.List;

/**
 * The verdict that a passage does not count, unless a person brings it back.
 *
 * @param reasons the most telling first, never empty
 */
public record Misread(List<Reason> reasons) implements Verdict {
  public Misread {
    reasons = List.copyOf(reasons);
    if (reasons.isEmpty()) {
      throw new IllegalArgumentException("a misread needs at least one reason");
    }
  }
}
