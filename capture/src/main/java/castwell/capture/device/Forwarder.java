package castwell.capture.device;

import castwell.analysis.wording.Phrase;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Passes on what a board says to a listener elsewhere, and what that listener says to the board. It
 * keeps nothing: what the board says while the other end is away is dropped and counted. Once that
 * is back, the board's next heartbeat tells there which edges are missing, and they are asked for.
 */
public final class Forwarder implements AutoCloseable {
  private final Port board;
  private final Port away;
  private final Consumer<Phrase> tell;
  private final List<PortReader> readers;
  private final List<Thread> threads;
  private final WholeLines lines = new WholeLines();
  private volatile Optional<Link> boardLink = Optional.empty();
  private volatile Optional<Link> awayLink = Optional.empty();
  private long droppedBytes;

  /**
   * @param board where the board is
   * @param away where the listener is
   * @param micros the host's monotonic clock
   * @param tell called with one sentence whenever something changes, by one of two threads
   * @param died called with the error that ended a thread, should one end
   */
  public Forwarder(
      Port board, Port away, LongSupplier micros, Consumer<Phrase> tell, Consumer<Throwable> died) {
    this.board = board;
    this.away = away;
    this.tell = tell;
    this.readers =
        List.of(
            new PortReader("board", board, micros, this::ofBoard),
            new PortReader("away", away, micros, this::ofAway));
    this.threads = readers.stream().map(reader -> thread(reader, died)).toList();
  }

  private static Thread thread(PortReader reader, Consumer<Throwable> died) {
    Thread thread = new Thread(reader, "forward");
    thread.setUncaughtExceptionHandler((t, e) -> died.accept(e));
    return thread;
  }

  public void start() {
    threads.forEach(Thread::start);
  }

  private void ofBoard(Signal signal) {
    if (signal instanceof Signal.Opened opened) {
      boardLink = Optional.of(opened.link());
      lines.reset();
      tellWhenBothAreOpen();
    } else if (signal instanceof Signal.Received received) {
      lines.add(received.bytes()).ifPresent(this::passOn);
    } else if (signal instanceof Signal.Closed closed) {
      boardLink = Optional.empty();
      tell.accept(closed.why());
    }
  }

  private void passOn(byte[] bytes) {
    if (!write(awayLink, bytes)) {
      drop(bytes.length);
    }
  }

  private void ofAway(Signal signal) {
    if (signal instanceof Signal.Opened opened) {
      awayLink = Optional.of(opened.link());
      tellWhenBothAreOpen();
    } else if (signal instanceof Signal.Received received) {
      write(boardLink, received.bytes()); // A lost request is repeated until it is answered.
    } else if (signal instanceof Signal.Closed closed) {
      awayLink = Optional.empty();
      tell.accept(Phrase.of("forward.away_lost", closed.why()));
    }
  }

  /** Writes if the link is there; a link that broke is noticed by its reader. */
  private static boolean write(Optional<Link> link, byte[] bytes) {
    try {
      if (link.isPresent()) {
        link.get().write(bytes);
        return true;
      }
    } catch (IOException e) {
      // A broken link is treated as if it weren't there.
    }
    return false;
  }

  private synchronized void drop(int bytes) {
    droppedBytes += bytes;
  }

  private synchronized void tellWhenBothAreOpen() {
    if (boardLink.isPresent() && awayLink.isPresent()) {
      tell.accept(
          droppedBytes == 0
              ? Phrase.of("forward.passing_on", board.name(), away.name())
              : Phrase.of("forward.passing_on_again", board.name(), away.name(), droppedBytes));
      droppedBytes = 0;
    }
  }

  /** Ends the forwarding, at once and for good. */
  @Override
  public void close() {
    readers.forEach(PortReader::close);
    for (Thread thread : threads) {
      try {
        thread.join(TimeUnit.SECONDS.toMillis(5));
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
