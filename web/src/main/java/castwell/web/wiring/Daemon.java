package castwell.web.wiring;

import castwell.capture.announce.Announcer;
import castwell.capture.clock.OnwardClock;
import castwell.capture.command.Commands;
import castwell.capture.daemon.Capture;
import castwell.capture.derive.Renewal;
import castwell.capture.device.Port;
import castwell.capture.health.Checkup;
import castwell.capture.health.HealthView;
import castwell.capture.health.RunningCapture;
import castwell.capture.publish.Publishers;
import castwell.capture.publish.Told;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.season.SeasonKeeper;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.station.LinkState;
import castwell.capture.store.Store;
import castwell.web.access.Doorkeeper;
import castwell.web.access.Invitation;
import castwell.web.http.Parts;
import castwell.web.http.WebServer;
import castwell.web.http.api.PlanViews;
import castwell.web.http.guard.CannotServe;
import castwell.web.settings.HttpAddress;
import castwell.web.settings.Settings;
import castwell.web.settings.Settings.Station;
import castwell.web.settings.Version;
import castwell.web.text.Speech;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Everything that runs, wired together over one data folder. */
public final class Daemon implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Daemon.class);

  private final Store store;
  private final Announcer announcer = new Announcer();
  private final OnwardClock clock =
      new OnwardClock(Clock.systemUTC(), Daemon::micros, TroubleLog::clock);

  private Daemon(Store store) {
    this.store = store;
  }

  public static Daemon open(Path folder) {
    return new Daemon(Store.open(folder));
  }

  public Store store() {
    return store;
  }

  public Commands commands(CaptureSettings settings) {
    return new Commands(store, settings, announcer, clock);
  }

  /** The host's monotonic clock in microseconds, which ports, capture and recordings share. */
  public static long micros() {
    return System.nanoTime() / 1_000;
  }

  /** Captures and serves until the process is told to end. */
  public void run(
      Settings settings,
      List<Station> stations,
      Map<String, Port> ports,
      HttpAddress address,
      boolean rehearsal)
      throws InterruptedException {
    CompletableFuture<Void> ended = new CompletableFuture<>();
    Thread ending = Thread.currentThread();
    Runtime.getRuntime().addShutdownHook(new Thread(() -> endAndWait(ended, ending), "end"));
    try (Running running =
        start(settings, stations, ports, address, rehearsal, ended::completeExceptionally)) {
      Invitation page = Invitation.to(settings.http(), running.address());
      System.out.printf("Castwell %s is at %s%n", Version.TEXT, page.page());
      running.key().ifPresent(key -> System.out.println(page.text(key)));
      System.out.flush();
      Supervisor supervisor = Supervisor.of(System.getenv(), () -> running.capture().isTurning());
      try {
        ended.get();
      } finally {
        supervisor.close();
      }
    } catch (ExecutionException e) {
      throw new IllegalStateException("the capture thread ended", e.getCause());
    } finally {
      ended.complete(null); // Nobody needs to wait for this any more.
    }
  }

  private void renew(CaptureSettings settings) {
    int passages = new Renewal(settings).renew(store, clock.instant(), (done, all) -> {});
    if (passages > 0) {
      LOG.info("{} earlier passages were read anew by this program's rules.", passages);
    }
  }

  /**
   * Captures and serves until closed.
   *
   * @param died is called with the exception that ended the capture, should that happen
   * @param died called with what ended the capture, should anything
   */
  public Running start(
      Settings settings,
      List<Station> stations,
      Map<String, Port> ports,
      HttpAddress address,
      boolean rehearsal,
      Consumer<Throwable> died) {
    renew(settings.capture());
    Commands commands = commands(settings.capture());
    for (Station station : stations) {
      store.read(t -> t.sessions().lastDated(station.name())).ifPresent(clock::goOnFrom);
    }
    for (Station station : stations) {
      commands.calibrateUnlessSaid(
          station.name(), clock.instant(), station.gates(), "the configuration");
    }
    announcer.add(new TroubleLog());
    Capture capture =
        new Capture(ports, store, settings.capture(), commands, announcer, clock, Daemon::micros);
    Doorkeeper door = new Doorkeeper(store, clock);
    Optional<Publishers> publishers =
        settings.broker().map(broker -> publishers(broker, settings, stations, commands, capture));
    WebServer server =
        new WebServer(
            new Parts(
                store,
                commands,
                capture,
                announcer,
                checkup(
                    settings,
                    stations,
                    capture,
                    () -> publishers.map(Publishers::states).orElse(List.of())),
                settings.capture(),
                settings.http(),
                address,
                door,
                clock,
                System::nanoTime,
                () -> publishers.map(Publishers::states).orElse(List.of()),
                rehearsal));
    try {
      HttpAddress bound = server.start(died);
      capture.start(died);
      publishers.ifPresent(all -> all.start(died));
      // The key is made this late because one that couldn't be shown would be lost.
      Optional<String> key = settings.http().needsKey(address) ? door.firstKey() : Optional.empty();
      SeasonKeeper season = new SeasonKeeper(store, settings.capture().zone());
      announcer.add(season);
      return new Running(bound, key, server, capture, publishers, season::close);
    } catch (CannotServe e) {
      server.close();
      throw e;
    }
  }

  private Publishers publishers(
      BrokerSettings broker,
      Settings settings,
      List<Station> stations,
      Commands commands,
      Capture capture) {
    Told told =
        new Told(
            station -> link(capture, station),
            // The broker's item is left out, since the readers of this are those at the broker.
            new HealthView(checkup(settings, stations, capture, List::of), Speech.TRADE)::of,
            PlanViews.of(store));
    Publishers publishers =
        new Publishers(
            broker,
            stations.stream().map(Station::name).toList(),
            store,
            commands,
            told,
            settings.capture().zone(),
            Speech.TRADE,
            Version.TEXT,
            clock,
            System::nanoTime);
    announcer.add(publishers);
    return publishers;
  }

  private Checkup checkup(
      Settings settings,
      List<Station> stations,
      Capture capture,
      Supplier<List<BrokerState>> broker) {
    return new Checkup(
        store,
        settings.capture(),
        stations.stream().map(Station::name).toList(),
        new RunningCapture(capture, broker, clock::sentence),
        clock);
  }

  private static LinkState link(Capture capture, String station) {
    return capture.links().stream()
        .filter(link -> link.station().equals(station))
        .findFirst()
        .orElseThrow();
  }

  /**
   * What runs; closing it returns when everything that came is on the disk.
   *
   * @param key the key, if one was made just now
   * @param endSeason stops the making of cells and season
   */
  public record Running(
      HttpAddress address,
      Optional<String> key,
      WebServer server,
      Capture capture,
      Optional<Publishers> publishers,
      Runnable endSeason)
      implements AutoCloseable {
    @Override
    public void close() {
      server.close();
      endSeason.run();
      capture.close();
      capture.stores().forEach(TroubleLog::atTheEnd);
      publishers.ifPresent(Publishers::close); // By now the last shot is on the disk.
    }
  }

  /** Keeps the process from ending before everything that came is on the disk. */
  private static void endAndWait(CompletableFuture<Void> ended, Thread ending) {
    if (ended.complete(null)) {
      try {
        ending.join(15_000);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      if (!ending.isAlive()) {
        Runtime.getRuntime().halt(0); // The process was told to end, and it ended in order.
      }
    }
  }

  @Override
  public void close() {
    store.close();
  }
}
