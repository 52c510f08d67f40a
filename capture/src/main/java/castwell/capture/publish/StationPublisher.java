package castwell.capture.publish;

import castwell.analysis.wording.Phrase;
import castwell.capture.clock.Backoff;
import castwell.capture.publish.broker.Broker;
import castwell.capture.publish.broker.BrokerConnection;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.publish.broker.BrokerUnavailable;
import castwell.capture.publish.broker.Kept;
import castwell.capture.publish.broker.Message;
import castwell.capture.store.Store;
import castwell.capture.store.StoreUnavailable;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells the broker what happens at one station, on a thread and over a connection of its own, since
 * a last will belongs to one connection. Whatever the broker does, shooting goes on.
 */
final class StationPublisher implements Runnable {
  private static final Logger LOG = LoggerFactory.getLogger(StationPublisher.class);
  private static final Duration LONGEST_DELAY = Duration.ofSeconds(4);
  private static final long HEALTH_EVERY_NANOS = TimeUnit.SECONDS.toNanos(30);
  private static final long LAST_WORDS_NANOS = TimeUnit.SECONDS.toNanos(2);

  private final Topics topics;
  private final BrokerSettings settings;
  private final Store store;
  private final Payloads payloads;
  private final Told told;
  private final Clock clock;
  private final LongSupplier nanos;
  private final Outbox outbox;
  private final TagWishes wishes;

  private final Semaphore calls = new Semaphore(0);
  private final CountDownLatch closed = new CountDownLatch(1);
  private volatile State state;

  private record State(boolean connected, Phrase sentence, Instant since) {}

  StationPublisher(
      Topics topics,
      BrokerSettings settings,
      Store store,
      Payloads payloads,
      Told told,
      TagWishes wishes,
      Clock clock,
      LongSupplier nanos) {
    this.topics = topics;
    this.settings = settings;
    this.store = store;
    this.payloads = payloads;
    this.told = told;
    this.clock = clock;
    this.nanos = nanos;
    this.outbox = new Outbox(store, topics, payloads);
    this.wishes = wishes;
    this.state = new State(false, Phrase.of("broker.not_yet"), clock.instant());
  }

  BrokerState state() {
    State now = state;
    return new BrokerState(
        topics.station(),
        now.connected(),
        now.sentence(),
        now.since(),
        outbox.waiting(),
        wishes.refused());
  }

  /** Says that there may be more to tell. */
  void call() {
    if (calls.availablePermits() == 0) { // A single permit is enough for everything that happened.
      calls.release();
    }
  }

  /** Has the thread send what is left, take leave of the broker if there is one, and end. */
  void end() {
    closed.countDown();
    call();
  }

  @Override
  public void run() {
    Backoff backoff = new Backoff(Duration.ofMillis(250), 2, LONGEST_DELAY);
    try {
      while (!isClosed()) {
        long began = nanos.getAsLong();
        try {
          speak();
        } catch (BrokerUnavailable | StoreUnavailable e) {
          stands(false, e.phrase());
        }
        if (nanos.getAsLong() - began > 2 * LONGEST_DELAY.toNanos()) {
          backoff.reset(); // The connection lasted.
        }
        closed.await(backoff.next().toMillis(), TimeUnit.MILLISECONDS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private boolean isClosed() {
    return closed.getCount() == 0;
  }

  /** Publishes over one connection, until it breaks or this is closed. */
  private void speak() throws BrokerUnavailable, InterruptedException {
    Broker broker = settings.broker();
    Message will = Message.kept(topics.status(), payloads.offline(topics.station()));
    // The client id is the same each time. A broker that still takes the last connection for alive
    // then ends it and sends its will before this connection says that it is online.
    BrokerConnection connection =
        BrokerConnection.open(
            broker, "castwell-" + topics.station(), Optional.of(will), this::hear, this::call);
    try {
      connection.subscribe(topics.tagsToSet(), true);
      Kept kept = new Kept(connection);
      keep(kept);
      stands(true, Phrase.of("broker.connected", broker.url()));
      tell(connection, kept);
      kept.keep(topics.status(), payloads.offline(topics.station()));
      connection.close();
    } finally {
      connection.abandon();
    }
  }

  private void tell(BrokerConnection connection, Kept kept)
      throws BrokerUnavailable, InterruptedException {
    long nextHealth = nanos.getAsLong();
    while (!isClosed()) {
      calls.drainPermits();
      grantWishes(connection);
      keep(kept);
      boolean more = outbox.passOn(connection);
      if (nanos.getAsLong() >= nextHealth) {
        nextHealth = nanos.getAsLong() + HEALTH_EVERY_NANOS;
        String health = Payloads.health(told.health().apply(topics.station()));
        connection.send(Message.once(topics.health(), health)).await();
      }
      if (!more) {
        calls.tryAcquire(nextHealth - nanos.getAsLong(), TimeUnit.NANOSECONDS);
      }
      if (!connection.isOpen()) {
        throw connection.whyLost();
      }
    }
    long began = nanos.getAsLong();
    while (outbox.passOn(connection) && nanos.getAsLong() - began < LAST_WORDS_NANOS) {
      // What is left is told at the next start.
    }
  }

  private void keep(Kept kept) throws BrokerUnavailable {
    String station = topics.station();
    kept.keep(topics.status(), payloads.online(told.link().apply(station)));
    kept.keep(topics.tags(), store.read(t -> payloads.tags(t, station)));
    kept.keep(topics.plan(), Payloads.plan(told.plan().apply(station)));
  }

  /** The connection calls this, so it may neither wait nor send. */
  private void hear(Message message) {
    wishes.add(message);
    call();
  }

  private void grantWishes(BrokerConnection connection) throws BrokerUnavailable {
    for (String refusal : wishes.grant()) {
      String payload = payloads.refused(topics.station(), refusal);
      connection.send(Message.once(topics.tagsRefused(), payload)).await();
    }
  }

  private void stands(boolean connected, Phrase sentence) {
    State before = state;
    if (before.connected() != connected || !before.sentence().equals(sentence)) {
      boolean same = before.connected() == connected;
      state = new State(connected, sentence, same ? before.since() : clock.instant());
      if (connected) {
        LOG.info("{}: {}", topics.station(), payloads.say(sentence));
      } else {
        LOG.warn("{}: {}", topics.station(), payloads.say(sentence));
      }
    }
  }
}
