package castwell.capture.publish;

import castwell.analysis.wording.Wording;
import castwell.capture.announce.Announcer;
import castwell.capture.command.Commands;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.Store;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/** Publishes what happens at every station to a broker. */
public final class Publishers implements Announcer.Listener, AutoCloseable {
  private static final long PATIENCE_MILLIS = TimeUnit.SECONDS.toMillis(10);

  private final List<StationPublisher> publishers = new ArrayList<>();
  private final List<Thread> threads = new ArrayList<>();

  /**
   * From now on nothing that happens at these stations is missed, though nothing is sent before
   * {@link #start}.
   *
   * @param zone the time zone in which a bow state's date is told
   * @param version this program's version
   * @param nanos a monotonic clock
   */
  public Publishers(
      BrokerSettings settings,
      List<String> stations,
      Store store,
      Commands commands,
      Told told,
      ZoneId zone,
      Wording wording,
      String version,
      Clock clock,
      LongSupplier nanos) {
    Payloads payloads = new Payloads(zone, wording, version, clock);
    for (String station : stations) {
      publishers.add(
          new StationPublisher(
              new Topics(station),
              settings,
              store,
              payloads,
              told,
              new TagWishes(station, commands, wording),
              clock,
              nanos));
    }
  }

  /**
   * @param died is called with the exception that ended a thread, should that happen
   */
  public void start(Consumer<Throwable> died) {
    for (StationPublisher publisher : publishers) {
      Thread thread = new Thread(publisher, "mqtt-" + threads.size());
      thread.setUncaughtExceptionHandler((t, e) -> died.accept(e));
      threads.add(thread);
      thread.start();
    }
  }

  public List<BrokerState> states() {
    return publishers.stream().map(StationPublisher::state).toList();
  }

  @Override
  public void fedMore() {
    publishers.forEach(StationPublisher::call);
  }

  @Override
  public void linkChanged(LinkState state) {
    publishers.forEach(StationPublisher::call);
  }

  @Override
  public void storeChanged(StoreState state) {
    // The station's health tells of it.
  }

  /** Returns when the broker was told that this program ends, or didn't answer. */
  @Override
  public void close() {
    publishers.forEach(StationPublisher::end);
    for (Thread thread : threads) {
      try {
        thread.join(PATIENCE_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
