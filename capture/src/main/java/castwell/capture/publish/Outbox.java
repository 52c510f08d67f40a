package castwell.capture.publish;

import castwell.capture.publish.broker.BrokerConnection;
import castwell.capture.publish.broker.BrokerUnavailable;
import castwell.capture.publish.broker.Message;
import castwell.capture.store.Feed;
import castwell.capture.store.Passages;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.capture.view.broker.Changed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What one station still has to tell the broker, in order: the stored feed from this reader's
 * stored place on. Each item of the feed is written in one transaction with what it tells of, and
 * the place moves on only past what the broker has acknowledged, so each message arrives at least
 * once, whatever happens. Memory never holds more than what may be in flight.
 */
final class Outbox {
  private static final int MOST_IN_FLIGHT = 20;

  private final Store store;
  private final Topics topics;
  private final Payloads payloads;
  private final String reader;

  /** The last item passed on in this run, which is never before the stored place. */
  private volatile long place;

  private record Entry(long item, Message message) {}

  /**
   * Some messages to send.
   *
   * @param end the last item of the feed that they cover
   * @param more whether there are items after it
   */
  private record Batch(List<Entry> entries, long end, boolean more) {}

  /** A station that was never published before begins with what happens next. */
  Outbox(Store store, Topics topics, Payloads payloads) {
    this.store = store;
    this.topics = topics;
    this.payloads = payloads;
    this.reader = "mqtt " + topics.station();
    this.place =
        store.write(
            t -> {
              long known = t.feed().place(reader).orElseGet(t.feed()::last);
              t.feed().moveTo(reader, known);
              return known;
            });
  }

  /**
   * Sends the next few, and returns when the broker has them.
   *
   * @return whether more wait
   */
  boolean passOn(BrokerConnection connection) throws BrokerUnavailable {
    Batch batch = next();
    List<BrokerConnection.Sent> sent = new ArrayList<>();
    for (Entry entry : batch.entries()) {
      sent.add(connection.send(entry.message()));
    }
    int acknowledged = 0;
    try {
      for (; acknowledged < sent.size(); acknowledged++) {
        sent.get(acknowledged).await();
      }
    } catch (BrokerUnavailable e) {
      if (acknowledged > 0) {
        move(batch.entries().get(acknowledged - 1).item());
      }
      throw e;
    }
    if (acknowledged > 0) {
      move(batch.end());
    }
    place = batch.end();
    return batch.more();
  }

  /**
   * Moves the place on. Should the store refuse, this run at least doesn't send again what the
   * broker has.
   */
  private void move(long item) {
    place = item;
    store.writing(t -> t.feed().moveTo(reader, item));
  }

  private Batch next() {
    return store.read(
        t -> {
          List<Feed.Item> items = t.feed().after(place, topics.station(), MOST_IN_FLIGHT);
          boolean full = items.size() == MOST_IN_FLIGHT;
          long end = full ? items.get(MOST_IN_FLIGHT - 1).id() : t.feed().last();
          List<Entry> entries = new ArrayList<>();
          for (Feed.Item item : items) {
            message(t, item).ifPresent(message -> entries.add(new Entry(item.id(), message)));
          }
          return new Batch(entries, end, full);
        });
  }

  /**
   * The message for an item. There is none for items that change a retained topic, which is told in
   * its present state, not change by change.
   */
  private Optional<Message> message(Transaction t, Feed.Item item) {
    return switch (item.kind()) {
      case SHOT ->
          Optional.of(
              t.shots()
                  .byPassage(item.passageId().orElseThrow())
                  .map(shot -> Message.once(topics.shot(), payloads.shot(item.id(), shot)))
                  .orElseGet(() -> joined(t, item)));
      case REFRESH -> Optional.of(refresh(item, Changed.SHOTS, Optional.empty()));
      case RACK -> Optional.of(refresh(item, Changed.RACK, Optional.empty()));
      case TAGS, PLAN -> Optional.empty();
    };
  }

  /** A message for a shot that has since become part of another passage. */
  private Message joined(Transaction t, Feed.Item item) {
    return refresh(
        item,
        Changed.JOINED,
        t.passages().byId(item.passageId().orElseThrow()).map(Passages.Row::shotId));
  }

  private Message refresh(Feed.Item item, Changed what, Optional<String> shotId) {
    String payload = Payloads.refresh(item.id(), topics.station(), what, shotId);
    return Message.once(topics.refresh(), payload);
  }

  /** How many items of the feed are still to be passed on. */
  long waiting() {
    return store.read(t -> t.feed().countAfter(place, topics.station()));
  }
}
