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

/** Tells a broker what happens at every station. */
public final class Publishers implements Announcer.Listener, AutoCloseable {
  private static final long PATIENCE_MILLIS = TimeUnit.SECONDS.toMillis(10);

  private final List<StationPublisher> publishers = new ArrayList<>();
  private final List<Thread> threads = new ArrayList<>();

  /**
   * From now on nothing that happens at these stations is missed, though nobody may be told yet.
   *
   * @param zone in which a bow state's date is told
   * @param version the program's
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
   * @param died called with what ended a thread, should anything
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
    // told with the station's health
  }

  /** Returns when the broker was told that we end, or didn't listen. */
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
