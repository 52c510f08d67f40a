package castwell.capture.daemon;

import castwell.capture.announce.Announcer;
import castwell.capture.clock.ClockStep;
import castwell.capture.clock.ClockSteps;
import castwell.capture.clock.HostClock;
import castwell.capture.command.Commands;
import castwell.capture.derive.Derivation;
import castwell.capture.device.Port;
import castwell.capture.device.PortReader;
import castwell.capture.device.Signal;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.station.BoardsHeard;
import castwell.capture.station.FaultCounts;
import castwell.capture.station.LinkState;
import castwell.capture.station.StationInput;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.Store;
import castwell.capture.wire.Faults;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * The capture loop. One reader thread a station waits for bytes; one thread does everything else
 * with them, so that the store has one writer and passages have one order.
 */
public final class Capture implements AutoCloseable {
  private static final int WAITING_SIGNALS = 1024;
  private static final long LONGEST_WAIT_MICROS = 250_000;

  /**
   * How long the loop may take for one turn before it counts as hung: a slow disk or a large import
   * may hold it up for nearly so long.
   */
  private static final long HUNG_AFTER_MICROS = 120_000_000;

  private final LongSupplier micros;
  private final BlockingQueue<Signal> signals = new ArrayBlockingQueue<>(WAITING_SIGNALS);
  private final Map<String, Pipeline> stations = new LinkedHashMap<>();
  private final List<PortReader> readers = new ArrayList<>();
  private final List<Thread> threads = new ArrayList<>();
  private final ClockSteps clockSteps;
  private volatile boolean open = true;
  private volatile long turnedMicros;

  /**
   * @param ports where each station's board is
   * @param micros the host's monotonic clock
   */
  public Capture(
      Map<String, Port> ports,
      Store store,
      CaptureSettings settings,
      Commands commands,
      Announcer announcer,
      Clock clock,
      LongSupplier micros) {
    this.micros = micros;
    this.clockSteps = new ClockSteps(clock, micros);
    Derivation derivation = new Derivation(settings);
    Recorder recorder = new Recorder(store, settings, derivation);
    HostClock hostClock = HostClock.live(clock, micros);
    BoardsHeard boards = new BoardsHeard();
    ports.forEach(
        (station, port) -> {
          StationInput input =
              new StationInput(station, port.name(), store, boards, settings, hostClock);
          Backlog backlog = new Backlog(station, hostClock, Backlog.MOST, input.waitingFacts());
          stations.put(station, new Pipeline(input, recorder, commands, announcer, store, backlog));
          readers.add(new PortReader(station, port, micros, this::post));
        });
  }

  /**
   * Starts all threads.
   *
   * @param died called with the error that ended a thread, should one end
   */
  public void start(Consumer<Throwable> died) {
    Thread loop = new Thread(this::run, "capture");
    loop.setUncaughtExceptionHandler((thread, e) -> died.accept(e));
    threads.add(loop);
    for (PortReader reader : readers) {
      Thread thread = new Thread(reader, "port-" + threads.size());
      thread.setUncaughtExceptionHandler((t, e) -> died.accept(e));
      threads.add(thread);
    }
    threads.forEach(Thread::start);
  }

  /** Whether the loop still turns; when it doesn't, it hangs. */
  public boolean isTurning() {
    return micros.getAsLong() - turnedMicros < HUNG_AFTER_MICROS;
  }

  public List<LinkState> links() {
    return stations.values().stream().map(Pipeline::link).toList();
  }

  /** The state of writing to the disk, station by station. */
  public List<StoreState> stores() {
    return stations.values().stream().map(Pipeline::store).toList();
  }

  public Map<String, Faults> faults() {
    Map<String, Faults> faults = new LinkedHashMap<>();
    stations.forEach((station, pipeline) -> faults.put(station, pipeline.faults()));
    return faults;
  }

  /** The last five minutes' heartbeats of a station, the oldest first. */
  public List<HeardBeat> recentBeats(String station) {
    return stations.get(station).recentBeats();
  }

  public FaultCounts recentFaults(String station) {
    return stations.get(station).recentFaults();
  }

  /** The last jump of this computer's clock since the start, if there was one. */
  public Optional<ClockStep> clockStep() {
    return clockSteps.last();
  }

  private void run() {
    while (open || !signals.isEmpty()) {
      turnedMicros = micros.getAsLong();
      clockSteps.look();
      Signal signal = awaitSignal();
      if (signal != null) {
        stations.get(signal.station()).hear(signal);
      }
      long until = heardUntil();
      stations.values().forEach(station -> station.advance(until));
    }
    long now = micros.getAsLong();
    stations.values().forEach(station -> station.end(now));
  }

  /**
   * The time up to which everything was heard. While signals wait it is that of the first one, so
   * that a host that is behind doesn't take what it hasn't come to for silence.
   */
  private long heardUntil() {
    long now = micros.getAsLong();
    Signal waiting = signals.peek();
    return waiting == null ? now : Math.min(now, waiting.micros());
  }

  /** The next signal, or null when something is due before one comes. */
  private Signal awaitSignal() {
    long due =
        stations.values().stream().mapToLong(Pipeline::nextLook).min().orElse(Long.MAX_VALUE);
    long wait = Math.max(0, Math.min(due - micros.getAsLong(), LONGEST_WAIT_MICROS));
    try {
      return signals.poll(wait, TimeUnit.MICROSECONDS);
    } catch (InterruptedException e) {
      open = false;
      return null;
    }
  }

  private void post(Signal signal) {
    try {
      signals.put(signal);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Closes the ports, takes in what had come, and returns when all of it is on the disk. */
  @Override
  public void close() {
    readers.forEach(PortReader::close);
    open = false;
    for (Thread thread : threads) {
      try {
        thread.join(TimeUnit.SECONDS.toMillis(10));
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
