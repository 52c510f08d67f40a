package castwell.analysis.verdict;

/**
 * Why a passage does not count.
 *
 * @param code for programs, in kebab-case, one a rule
 * @param sentence for people: one plain sentence, figures in the trade's units
 */
public record Reason(String code, String sentence) {}
