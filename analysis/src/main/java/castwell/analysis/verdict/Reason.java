package castwell.analysis.verdict;

import castwell.analysis.wording.Phrase;
import java.util.List;

/**
 * Why a passage does not count.
 *
 * @param code the rule's code for programs, in kebab-case
 * @param told the reason for people, a sentence each
 */
public record Reason(String code, List<Phrase> told) {
  public Reason {
    told = List.copyOf(told);
  }

  static Reason of(String code, String key, Object... values) {
    return new Reason(code, List.of(Phrase.of(key, values)));
  }
}
