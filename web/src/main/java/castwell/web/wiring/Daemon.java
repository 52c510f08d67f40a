package castwell.web.wiring;

import castwell.capture.daemon.Announcer;
import castwell.capture.daemon.Capture;
import castwell.capture.daemon.CaptureSettings;
import castwell.capture.daemon.Desk;
import castwell.capture.device.Port;
import castwell.capture.store.Store;
import castwell.web.http.Version;
import castwell.web.http.WebServer;
import castwell.web.settings.HttpAddress;
import castwell.web.settings.Settings.Station;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;

/** Everything that runs, wired together over one data folder. */
public final class Daemon implements AutoCloseable {
  private final Store store;
  private final Announcer announcer = new Announcer();
  private final Clock clock = Clock.systemUTC();

  private Daemon(Store store) {
    this.store = store;
  }

  public static Daemon open(Path folder) {
    return new Daemon(Store.open(folder));
  }

  public Store store() {
    return store;
  }

  public Desk desk(CaptureSettings settings) {
    return new Desk(store, settings, announcer, clock);
  }

  private static long micros() {
    return System.nanoTime() / 1_000;
  }

  /** Captures and serves until the process is told to end. */
  public void run(
      CaptureSettings settings,
      List<Station> stations,
      Map<String, Port> ports,
      HttpAddress address,
      boolean rehearsal)
      throws InterruptedException {
    Desk desk = desk(settings);
    for (Station station : stations) {
      desk.calibrateUnlessSaid(station.name(), Instant.now(), station.gates(), "the configuration");
    }
    CompletableFuture<Void> ended = new CompletableFuture<>();
    try (Capture capture =
            new Capture(ports, store, settings, desk, announcer, clock, Daemon::micros);
        WebServer server =
            new WebServer(
                store, desk, capture, announcer, settings, clock, System::nanoTime, rehearsal)) {
      Thread ending = Thread.currentThread();
      Thread hook = new Thread(() -> endAndWait(ended, ending), "end");
      Runtime.getRuntime().addShutdownHook(hook);
      HttpAddress bound = server.start(address);
      capture.start(ended::completeExceptionally);
      System.out.printf("Castwell %s is at http://%s/%n", Version.TEXT, bound);
      System.out.flush();
      ended.get();
    } catch (ExecutionException e) {
      throw new IllegalStateException("the capture thread ended", e.getCause());
    }
  }

  /** The process may not end before what came is on the disk. */
  private static void endAndWait(CompletableFuture<Void> ended, Thread ending) {
    if (ended.complete(null)) {
      try {
        ending.join(15_000);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      if (!ending.isAlive()) {
        Runtime.getRuntime().halt(0); // told to end, and ended as told
      }
    }
  }

  @Override
  public void close() {
    store.close();
  }
}
