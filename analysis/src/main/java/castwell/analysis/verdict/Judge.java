package castwell.analysis.verdict;

import java.util.List;
import java.util.Optional;

/** Judges one passage by every rule. */
public final class Judge {
  /**
   * The version of the rules. Raise it whenever a rule changes, so that stored verdicts by older
   * rules are known as such.
   */
  public static final int RULES_VERSION = 1;

  /** The rules, the most telling first: a fault that explains others comes before them. */
  private static final List<Rule> RULES =
      List.of(
          new BoardRestarted(),
          new LostEdges(),
          new MergedEdges(),
          new OneGate(),
          new MissingEdge(),
          new WrongOrder(),
          new TooSlow(),
          new TooFast(),
          new TooManyEdges(),
          new NoArrowsLength(),
          new NotTheTaggedLength(),
          new FrontTailDisagree());

  private Judge() {}

  public static Verdict judge(Evidence evidence) {
    List<Reason> reasons =
        RULES.stream().map(rule -> rule.judge(evidence)).flatMap(Optional::stream).toList();
    return reasons.isEmpty() ? new Clean() : new Misread(reasons);
  }
}
