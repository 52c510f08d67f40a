package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.view.health.Level;
import castwell.capture.word.Lasting;
import java.time.Duration;
import java.time.Instant;

/** Judges whether the broker is told what happens, and how much waits for it. */
final class BrokerItem {
  private static final Subject SUBJECT = Subject.of("broker", "health.title_broker");

  /**
   * When more messages wait than this, that is much: they are the shots of several ends (common
   * practice, no source).
   */
  private static final long MUCH = 100;

  private BrokerItem() {}

  static Item of(BrokerState broker, Instant now) {
    boolean isFarBehind = broker.connected() && broker.waiting() > MUCH;
    Level level = broker.connected() && !isFarBehind ? Level.WELL : Level.ATTENTION;
    Phrase told =
        Phrase.of(
            "health.broker",
            broker.sentence(),
            Lasting.words(Duration.between(broker.since(), now)),
            broker.waiting());
    Phrase remedy = isFarBehind ? Phrase.of("health.broker_wait") : Phrase.of("health.broker_see");
    return Item.of(SUBJECT, level, told, remedy).with(Measured.plain(broker.waiting(), "messages"));
  }
}
