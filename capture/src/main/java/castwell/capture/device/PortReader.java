package castwell.capture.device;

import castwell.analysis.wording.Phrase;
import castwell.capture.clock.Backoff;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Reads one station's port for as long as the program runs, on a thread of its own. It opens the
 * port, hands on what comes, and opens it again when it vanishes. A failure that stays the same is
 * reported once.
 */
public final class PortReader implements Runnable, AutoCloseable {
  /** A way to wait between two tries. */
  interface Pause {
    void millis(long millis) throws InterruptedException;
  }

  private final String station;
  private final Port port;
  private final LongSupplier micros;
  private final Consumer<Signal> post;
  private final Pause pause;
  private volatile boolean closed;
  private volatile Runnable wake = () -> {};
  private final Backoff backoff = new Backoff(Duration.ofMillis(250), 2, Duration.ofSeconds(5));
  private Optional<Phrase> lastFailure = Optional.empty();

  /**
   * @param micros the host's monotonic clock
   * @param post called by the reading thread; it should not wait for long
   */
  public PortReader(String station, Port port, LongSupplier micros, Consumer<Signal> post) {
    this(station, port, micros, post, Thread::sleep);
  }

  PortReader(String station, Port port, LongSupplier micros, Consumer<Signal> post, Pause pause) {
    this.station = station;
    this.port = port;
    this.micros = micros;
    this.post = post;
    this.pause = pause;
  }

  @Override
  public void run() {
    Thread thread = Thread.currentThread();
    wake = thread::interrupt;
    try {
      while (!closed) {
        openAndRead(thread);
        if (!closed) {
          pause.millis(backoff.next().toMillis());
        }
      }
    } catch (InterruptedException e) {
      // Only close() interrupts, so the reading ends.
    }
  }

  private void openAndRead(Thread thread) {
    try (Link link = port.open()) {
      wake = endOf(thread, link);
      if (closed) {
        return;
      }
      lastFailure = Optional.empty();
      post.accept(new Signal.Opened(station, micros.getAsLong(), port.name(), link));
      readUntilGone(link);
      if (!closed) {
        tellClosed(Phrase.of("link.gone", port.name()));
      }
    } catch (PortUnavailable e) {
      Optional<Phrase> failure = Optional.of(e.phrase());
      if (!closed && !failure.equals(lastFailure)) {
        lastFailure = failure;
        tellClosed(e.phrase());
      }
    }
  }

  private static Runnable endOf(Thread thread, Link link) {
    return () -> {
      thread.interrupt();
      link.close();
    };
  }

  private void readUntilGone(Link link) {
    byte[] buffer = new byte[4096];
    int count = link.read(buffer);
    long arrivalMicros = micros.getAsLong();
    while (count >= 0 && !closed) {
      if (count > 0) {
        backoff.reset();
        post.accept(new Signal.Received(station, arrivalMicros, Arrays.copyOf(buffer, count)));
      }
      count = link.read(buffer);
      arrivalMicros = micros.getAsLong();
    }
  }

  private void tellClosed(Phrase why) {
    post.accept(new Signal.Closed(station, micros.getAsLong(), why));
  }

  /** Ends the reading, at once and for good, and closes the link. */
  @Override
  public void close() {
    closed = true;
    wake.run();
  }
}
