package castwell.capture.store;

import castwell.analysis.wording.Phrase;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A passage with all that is known of it: what its ticks say under the calibration in force, its
 * tags, and what a person decided.
 *
 * @param origin where its speed comes from
 */
public record Shot(
    long passageId,
    String shotId,
    Instant fired,
    Origin origin,
    String station,
    String session,
    int end,
    Figure figure,
    Optional<BowState> bow,
    Optional<Arrow> arrow,
    Optional<Decision> decision) {

  /** Where a speed comes from: our gates, or a person who read it off another display. */
  public sealed interface Origin {}

  /**
   * A shot that our gates saw.
   *
   * @param device the board's name, without its series
   * @param middleFromBowM distance from the bow to the middle between the gates, which is where the
   *     speed holds
   * @param isMeasured whether somebody measured the gates' spacing
   */
  public record ByGates(
      String device,
      int boot,
      int firstEdge,
      int lastEdge,
      double middleFromBowM,
      boolean isMeasured)
      implements Origin {}

  /**
   * A shot that a person wrote down.
   *
   * @param source where it was written down
   * @param note a person's words, may be empty
   */
  public record ByHand(String source, String note) implements Origin {}

  /** What the gates saw; empty for a shot entered by hand. */
  public Optional<ByGates> byGates() {
    return origin instanceof ByGates gates ? Optional.of(gates) : Optional.empty();
  }

  /**
   * What a person decided about a shot.
   *
   * @param reason a person's words, may be empty
   */
  public record Decision(Decided decided, String reason, Instant at, String by) {}

  /** Whether the shot counts: by the rules' verdict, unless a person decided otherwise. */
  public boolean counts() {
    return judgedByPerson() ? decided() == Decided.BROUGHT_BACK : figure.clean();
  }

  public boolean judgedByPerson() {
    return decision.isPresent() && decided() != Decided.AS_JUDGED;
  }

  private Decided decided() {
    return decision.map(Decision::decided).orElse(Decided.AS_JUDGED);
  }

  /**
   * Why the shot doesn't count, or why it counts in spite of the rules; empty when there is nothing
   * to say.
   */
  public List<Phrase> reasons() {
    List<Phrase> rules = figure.reasons();
    if (!judgedByPerson()) {
      return rules;
    }
    String words = decision.map(Decision::reason).filter(text -> !text.isBlank()).orElse("");
    return Stream.concat(Stream.of(decided(words)), rules.stream()).toList();
  }

  /**
   * A person's words are quoted, but a whole sentence stands as it is: the rules' own, from when
   * the shot was first kept.
   */
  private Phrase decided(String words) {
    if (decided() == Decided.BROUGHT_BACK) {
      return words.isEmpty()
          ? Phrase.of("verdict.brought_back")
          : Phrase.of("verdict.brought_back_because", words);
    }
    if (words.isEmpty()) {
      return Phrase.of("verdict.set_aside");
    }
    return Phrase.of(words.endsWith(".") ? "as_is" : "verdict.set_aside_because", words);
  }
}
