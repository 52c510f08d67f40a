package castwell.analysis.verdict;

import castwell.analysis.reading.StoryTold;
import castwell.analysis.wording.Amount;
import castwell.analysis.wording.Phrase;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** An arrow explains the edges, and something else does so nearly as well. */
final class TwoStories implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    if (evidence.isOfNoArrow()) {
      return evidence.reading().closeRunnerUp().flatMap(next -> ofNoArrow(evidence, next));
    }
    return evidence
        .arrow()
        .filter(arrow -> !arrow.isSure())
        .map(arrow -> reason(arrow.speed().mps(), arrow.rival()));
  }

  private static Optional<Reason> ofNoArrow(Evidence evidence, StoryTold next) {
    return evidence.isPartlyLost() || next.speedsMps().isEmpty()
        ? Optional.empty()
        : Optional.of(reason(next.speedsMps().get(0), evidence.reading().best()));
  }

  private static Reason reason(double arrowMps, StoryTold other) {
    Stream<Double> speeds = Stream.concat(Stream.of(arrowMps), other.speedsMps().stream());
    Phrase told = new Phrase(key(other.kind()), speeds.<Object>map(Amount::speed).toList());
    return new Reason("two-stories", List.of(told));
  }

  private static String key(StoryTold.Kind other) {
    return switch (other) {
      case ARROW -> "verdict.two_stories_arrow";
      case TWO_ARROWS -> "verdict.two_stories_two_arrows";
      case STRAYS_ALONE, FLOOD -> "verdict.two_stories_strays";
      case OTHER_OBJECTS -> "verdict.two_stories_objects";
      case LAMP -> "verdict.two_stories_lamp";
    };
  }
}
