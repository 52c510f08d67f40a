package castwell.analysis.verdict;

import java.util.List;
import java.util.Optional;

/** Asks every rule about one passage. */
public final class Judge {
  /** One up whenever a rule changes, so that stored verdicts are known to be of older rules. */
  public static final int RULES_VERSION = 1;

  /** The most telling first: what explains the others comes before them. */
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
