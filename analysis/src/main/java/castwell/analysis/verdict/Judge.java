package castwell.analysis.verdict;

import java.util.List;
import java.util.Optional;

/** Judges one passage by every rule. */
public final class Judge {
  /**
   * The version of the rules. Raise it whenever a rule changes, so that stored verdicts by older
   * rules are known as such.
   */
  public static final int RULES_VERSION = 2;

  /**
   * The rules, the most telling first: a fault that explains others comes before them. Those of an
   * arrow look at the story in which it is; those of other objects at the passage as one object.
   */
  private static final List<Rule> RULES =
      List.of(
          new BoardRestarted(),
          new LostEdges(),
          new FlickeringLamp(),
          new Flood(),
          new TwoArrows(),
          new TwoStories(),
          new MergedEdges(),
          new OneGate(),
          new MissingEdge(),
          new OnePair(),
          new WrongOrder(),
          new TooSlow(),
          new TooFast(),
          new TooManyEdges(),
          new NoArrowsLength(),
          new NotTheTaggedLength(),
          new FrontTailDisagree());

  private Judge() {}

  static Verdict judge(Evidence evidence) {
    List<Reason> reasons =
        RULES.stream().map(rule -> rule.judge(evidence)).flatMap(Optional::stream).toList();
    if (!reasons.isEmpty()) {
      return new Misread(reasons);
    }
    return evidence.arrow().isPresent() ? new Clean() : new Misread(List.of(NoArrow.reason()));
  }
}
