package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.view.health.Level;
import castwell.capture.wire.Sentence.Heartbeat;

/**
 * Judges how many edges are spoilt since the board's start: those that fell together and got one
 * stamp, and those that the board had to drop.
 */
final class EdgesItem {
  private static final Subject SUBJECT = Subject.of("edges", "health.title_edges");

  /**
   * An arrow makes four edges; more than one spoilt in a hundred is reported (common practice, no
   * source).
   */
  private static final double MOST_SPOILT = 0.01;

  private static final double MOST_SPOILT_BAD = 0.1;
  private static final int FEWEST_SPOILT = 3;

  private EdgesItem() {}

  static Item of(Vitals vitals) {
    return vitals
        .lastBeat()
        .map(last -> of(last.beat()))
        .orElseGet(
            () ->
                Item.cantTell(
                    SUBJECT, Phrase.of("health.edges_none"), Phrase.of("health.see_port")));
  }

  private static Item of(Heartbeat beat) {
    long all = (long) beat.edges() + beat.dropped();
    long spoilt = (long) beat.merged() + beat.dropped();
    double share = all == 0 ? 0 : (double) spoilt / all;
    Level level =
        spoilt < FEWEST_SPOILT || share <= MOST_SPOILT
            ? Level.WELL
            : share > MOST_SPOILT_BAD ? Level.BAD : Level.ATTENTION;
    Phrase told = Phrase.of("health.edges", all, beat.merged(), beat.dropped());
    return Item.of(SUBJECT, level, told, Phrase.of("health.lamp"))
        .with(Measured.of(share * 100, "%", all));
  }
}
