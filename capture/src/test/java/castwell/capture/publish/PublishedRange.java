package castwell.capture.publish;

import castwell.analysis.wording.Phrase;
import castwell.capture.English;
import castwell.capture.Until;
import castwell.capture.announce.Announcer;
import castwell.capture.command.Commands;
import castwell.capture.daemon.RangeBench;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.publish.broker.Secret;
import castwell.capture.station.LinkState;
import castwell.capture.store.Passages;
import castwell.capture.store.Rows;
import castwell.capture.store.Store;
import castwell.capture.view.health.Level;
import castwell.capture.view.health.PartHealth;
import castwell.capture.view.health.StationHealth;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;

/** A data folder whose one station is published. */
final class PublishedRange implements AutoCloseable {

  private final Store store;
  private final Announcer announcer = new Announcer();
  private final Commands commands;
  private final Publishers publishers;
  private final List<Throwable> deaths = new CopyOnWriteArrayList<>();
  private final List<String> shot = new ArrayList<>();

  PublishedRange(Path folder, BrokerSettings settings) {
    Clock clock = Clock.systemUTC();
    store = Store.open(folder);
    commands = new Commands(store, RangeBench.SETTINGS, announcer, clock);
    LinkState link =
        new LinkState(
            Rows.STATION,
            "/dev/ttyUSB0",
            LinkState.State.ONLINE,
            Phrase.of("link.answers", "gate-1"),
            Optional.of("gate-1"),
            Optional.empty(),
            Rows.NOON);
    publishers =
        new Publishers(
            settings,
            List.of(Rows.STATION),
            store,
            commands,
            new Told(station -> link, PublishedRange::well, station -> Optional.empty()),
            RangeBench.SETTINGS.zone(),
            English::say,
            "of a test",
            clock,
            System::nanoTime);
    announcer.add(publishers);
    publishers.start(deaths::add);
  }

  static BrokerSettings at(URI url) {
    return settings(url, Optional.empty());
  }

  /** As one user with one password. */
  static BrokerSettings settings(URI url, Optional<String> password) {
    return new BrokerSettings(
        url.toString(),
        password.map(p -> "castwell"),
        password.map(Secret::new),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  Store store() {
    return store;
  }

  Commands commands() {
    return commands;
  }

  /** As many passages are stored, 17 s after one another, as the recorder would; all at once. */
  void shoot(int howMany) {
    store.writing(
        t -> {
          for (int i = 0; i < howMany; i++) {
            int n = shot.size();
            Passages.Row row = Rows.shoot(t, 1 + 4 * n, Rows.NOON.plusSeconds(17L * n), true);
            t.feed().shot(Rows.STATION, row.id());
            shot.add(row.shotId());
          }
        });
    publishers.fedMore();
  }

  /** The ids of all that were shot, in order. */
  List<String> shot() {
    return List.copyOf(shot);
  }

  BrokerState state() {
    return publishers.states().get(0);
  }

  void awaitConnected() {
    Until.holds("the publisher connected", () -> state().connected());
  }

  void awaitTrouble(String word) {
    Until.holds(
        "trouble that says " + word,
        () -> !state().connected() && English.say(state().sentence()).contains(word));
  }

  /** The ids that a subscriber heard, each where it first came. */
  static List<String> ids(Subscriber subscriber) {
    return subscriber.texts("castwell/" + Rows.STATION + "/shot").stream()
        .map(text -> text.replaceFirst(".*\"shot_id\":\"([^\"]+)\".*", "$1"))
        .distinct()
        .toList();
  }

  void awaitAllHeardBy(Subscriber subscriber) {
    Until.holds("an empty outbox", () -> state().waiting() == 0);
    Until.holds("the last shot at the subscriber", () -> ids(subscriber).size() >= shot.size());
  }

  @Override
  public void close() {
    publishers.close();
    store.close();
    if (!deaths.isEmpty()) {
      throw new AssertionError("a thread died", deaths.get(0));
    }
  }

  private static StationHealth well(String station) {
    return new StationHealth(station, Rows.NOON, new PartHealth(Level.WELL, List.of()));
  }
}
