package castwell.capture.daemon;

import castwell.analysis.wording.Phrase;
import castwell.capture.clock.HostClock;
import castwell.capture.station.StoreState;
import castwell.capture.store.StoreUnavailable;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntSupplier;

/**
 * What one station still has to write, in order. While the disk doesn't take it, it is kept in
 * memory up to a bound, and tried again every so often. Used by one thread.
 */
final class Backlog {
  /** An hour of shooting an arrow every 4 s; about a kilobyte each. */
  static final int MOST = 900;

  /** Five hours of beats. */
  private static final int MOST_FACTS = 20_000;

  static final long RETRY_MICROS = 2_000_000;

  private final HostClock clock;
  private final int most;
  private final IntSupplier waitingFacts;
  private final Runnable probe;
  private final Consumer<StoreState> listener;
  private final Deque<Waiting> waiting = new ArrayDeque<>();
  private volatile StoreState state;
  private long retryAt = Long.MAX_VALUE;

  private record Waiting(Runnable work, boolean isShot) {}

  /**
   * @param most how much it keeps; with 0 trouble is thrown on to the caller at once
   * @param waitingFacts how many other raw facts wait beside it
   * @param probe writes something, to see whether that can be done
   */
  Backlog(
      String station,
      HostClock clock,
      int most,
      IntSupplier waitingFacts,
      Runnable probe,
      Consumer<StoreState> listener) {
    this.clock = clock;
    this.most = most;
    this.waitingFacts = waitingFacts;
    this.probe = probe;
    this.listener = listener;
    this.state = new StoreState(station, Optional.empty(), clock.now(), 0, false);
  }

  StoreState state() {
    return state;
  }

  boolean isEmpty() {
    return waiting.isEmpty();
  }

  boolean isInTrouble() {
    return state.trouble().isPresent();
  }

  boolean isFull() {
    return most > 0 && (waiting.size() >= most || waitingFacts.getAsInt() >= MOST_FACTS);
  }

  /**
   * @param work which either does all of it, or throws {@link StoreUnavailable} and has done
   *     nothing
   */
  void add(Runnable work) {
    add(new Waiting(work, false));
  }

  /** The same for a passage. */
  void addShot(Runnable work) {
    add(new Waiting(work, true));
  }

  private void add(Waiting work) {
    waiting.add(work);
    if (isInTrouble()) {
      tell(state.trouble());
    }
  }

  /** Writes what waits, unless that failed a moment ago. */
  void write(long micros) {
    if (!isInTrouble() || micros >= retryAt) {
      writeNow(micros);
    }
  }

  void writeNow(long micros) {
    try {
      if (isInTrouble() && waiting.isEmpty()) {
        probe.run();
      }
      while (!waiting.isEmpty()) {
        waiting.peek().work().run();
        waiting.remove();
      }
      retryAt = Long.MAX_VALUE;
      tell(Optional.empty());
    } catch (StoreUnavailable e) {
      refused(e, micros);
    }
  }

  /** The store let something not be done. */
  void refused(StoreUnavailable trouble, long micros) {
    if (most == 0) {
      throw trouble;
    }
    retryAt = micros + RETRY_MICROS;
    tell(Optional.of(trouble.phrase()));
  }

  /** When it is tried again. */
  long nextLook() {
    return retryAt;
  }

  private void tell(Optional<Phrase> trouble) {
    Instant since = trouble.equals(state.trouble()) ? state.since() : clock.now();
    int shots = (int) waiting.stream().filter(Waiting::isShot).count();
    StoreState next = new StoreState(state.station(), trouble, since, shots, isFull());
    if (!next.equals(state)) {
      state = next;
      listener.accept(next);
    }
  }
}
