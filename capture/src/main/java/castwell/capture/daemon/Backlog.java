package castwell.capture.daemon;

import castwell.analysis.wording.Phrase;
import castwell.capture.clock.HostClock;
import castwell.capture.station.StoreState;
import castwell.capture.station.WaitingFacts;
import castwell.capture.store.StoreUnavailable;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * What one station still has to write, in order. While the disk takes nothing, it is kept in memory
 * up to a bound and tried again every 2 s. One thread uses this.
 */
final class Backlog {
  /** The most writes kept: an hour of shooting an arrow every 4 s, at about a kilobyte each. */
  static final int MOST = 900;

  /** The most raw facts kept beside them, which are five hours of beats. */
  private static final int MOST_FACTS = 20_000;

  static final long RETRY_MICROS = 2_000_000;

  private final HostClock clock;
  private final int most;
  private final WaitingFacts facts;
  private final Deque<Write> waiting = new ArrayDeque<>();
  private final List<StoreState> untold = new ArrayList<>();
  private volatile StoreState state;
  private long retryAt = Long.MAX_VALUE;

  /**
   * @param most the most writes to keep; with 0 the store's trouble is thrown on to the caller at
   *     once
   * @param facts the raw facts that wait beside the writes
   */
  Backlog(String station, HostClock clock, int most, WaitingFacts facts) {
    this.clock = clock;
    this.most = most;
    this.facts = facts;
    this.state = new StoreState(station, Optional.empty(), clock.now(), 0, false);
  }

  StoreState state() {
    return state;
  }

  /** Takes out the states since the last call, the newest last. */
  List<StoreState> takeChanges() {
    List<StoreState> taken = List.copyOf(untold);
    untold.clear();
    return taken;
  }

  boolean isEmpty() {
    return waiting.isEmpty();
  }

  boolean isInTrouble() {
    return state.trouble().isPresent();
  }

  boolean isFull() {
    return most > 0 && (waiting.size() >= most || facts.size() >= MOST_FACTS);
  }

  void add(Write write) {
    waiting.add(write);
    if (isInTrouble()) {
      tell(state.trouble());
    }
  }

  /**
   * Picks up what is to be written now; empty where nothing waits, or where the last try failed a
   * moment ago. After trouble with nothing waiting it is a probe.
   */
  Optional<Write> pickUp(long micros) {
    if (isInTrouble() && micros < retryAt) {
      return Optional.empty();
    }
    if (waiting.isEmpty() && isInTrouble()) {
      waiting.add(new Write.Probe());
    }
    return Optional.ofNullable(waiting.peek());
  }

  /** Notes that the first write is on the disk. */
  void noteWritten() {
    waiting.remove();
    if (waiting.isEmpty()) {
      retryAt = Long.MAX_VALUE;
      tell(Optional.empty());
    }
  }

  /** Notes that the store refused; the first write stays the first. */
  void noteRefused(StoreUnavailable trouble, long micros) {
    if (most == 0) {
      throw trouble;
    }
    retryAt = micros + RETRY_MICROS;
    tell(Optional.of(trouble.phrase()));
  }

  /** Lets what was refused be tried again at once. */
  void retryNow() {
    retryAt = Long.MIN_VALUE;
  }

  /** When to try again, in micros. */
  long nextLook() {
    return retryAt;
  }

  private void tell(Optional<Phrase> trouble) {
    Instant since = trouble.equals(state.trouble()) ? state.since() : clock.now();
    int shots = (int) waiting.stream().filter(Write.Shot.class::isInstance).count();
    StoreState next = new StoreState(state.station(), trouble, since, shots, isFull());
    if (!next.equals(state)) {
      state = next;
      untold.add(next);
    }
  }
}
