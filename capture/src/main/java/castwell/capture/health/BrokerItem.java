package castwell.capture.health;

import castwell.capture.publish.BrokerState;
import castwell.capture.word.Lasting;
import java.time.Duration;
import java.time.Instant;

/** Whether the broker is told what happens, and how much waits for it. */
final class BrokerItem {
  private static final String NAME = "broker";

  /** More than some ends' shots (common practice, no source). */
  private static final long MUCH = 100;

  private BrokerItem() {}

  static Item of(BrokerState broker, Instant now) {
    boolean isFarBehind = broker.connected() && broker.waiting() > MUCH;
    Level level = broker.connected() && !isFarBehind ? Level.WELL : Level.ATTENTION;
    String told =
        "%s (for %s; %d messages wait for it, on the disk.)"
            .formatted(
                broker.sentence(),
                Lasting.words(Duration.between(broker.since(), now)),
                broker.waiting());
    String remedy =
        isFarBehind
            ? "Wait until it has taken them; if more and more wait, look to the broker."
            : "See [mqtt] in castwell.toml, the broker and the network. Nothing is lost meanwhile.";
    return Item.of(NAME, level, told, remedy).with(Measured.plain(broker.waiting(), "messages"));
  }
}
