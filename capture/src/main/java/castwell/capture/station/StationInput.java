package castwell.capture.station;

import castwell.capture.clock.BoardClock;
import castwell.capture.clock.HostClock;
import castwell.capture.device.Signal;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Board;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.RawFacts.Timing;
import castwell.capture.store.Store;
import castwell.capture.wire.Fault;
import castwell.capture.wire.Faults;
import castwell.capture.wire.Sentence;
import castwell.capture.wire.Sentence.EdgeSeen;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.Sentence.Key;
import castwell.capture.wire.Sentence.Loss;
import castwell.capture.wire.Sentence.Missing;
import castwell.capture.wire.WireReader;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;

/** One station: bytes from its board to closed passages, hops one and two. Used by one thread. */
public final class StationInput {
  private static final long FLUSH_MICROS = 30_000_000;
  private static final long NEVER_YET = Long.MIN_VALUE;

  /** An odd number near 2^64 over the golden ratio scatters names that are alike (Knuth, 6.4). */
  private static final long SCATTER = 0x9E37_79B9_7F4A_7C15L;

  /** What to take a board for that never said who it is. */
  private static final String UNNAMED = "unnamed";

  private final String station;
  private final Store store;
  private final BoardsHeard boards;
  private final HostClock hostClock;
  private final Faults faults = new Faults();
  private final RecentFaults recentFaults = new RecentFaults(faults);
  private final RecentBeats recentBeats = new RecentBeats();
  private final List<HeardBeat> untoldBeats = new ArrayList<>();
  private final WireReader wire = new WireReader(faults);
  private final BoardQuestions questions = new BoardQuestions();
  private final LinkWatch watch;
  private final WaitingFacts waitingFacts = new WaitingFacts();
  private final HeldSentences held = new HeldSentences();
  private final List<KeyPress> keys = new ArrayList<>();
  private final BoardTrack track;
  private int keep;
  private long nextFlush = NEVER_YET;

  public record KeyPress(Key key, Instant at) {}

  public StationInput(
      String station,
      String port,
      Store store,
      BoardsHeard boards,
      CaptureSettings settings,
      HostClock hostClock,
      Consumer<LinkState> listener) {
    this.station = station;
    this.store = store;
    this.boards = boards;
    this.hostClock = hostClock;
    this.watch = new LinkWatch(station, port, hostClock, listener);
    this.track =
        new BoardTrack(
            station,
            store,
            boards,
            settings,
            hostClock,
            faults,
            waitingFacts,
            new Listening(store, station, port, hostClock.now(), 0));
  }

  public String station() {
    return station;
  }

  public LinkState link() {
    return watch.state();
  }

  public Faults faults() {
    return faults;
  }

  public RecentFaults recentFaults() {
    return recentFaults;
  }

  public RecentBeats recentBeats() {
    return recentBeats;
  }

  public WaitingFacts waitingFacts() {
    return waitingFacts;
  }

  public Optional<Board> board() {
    return track.context().map(BoardBoot::board);
  }

  public BoardClock boardClock() {
    return track.clock();
  }

  /** Takes in what the station's reader tells. */
  public void hear(Signal signal) {
    long micros = signal.micros();
    if (signal instanceof Signal.Opened opened) {
      wire.reset();
      recentBeats.forget();
      held.opened(micros);
      track.listen(listening(opened.port(), micros));
      watch.opened(opened.port(), micros);
      questions.opened(opened.link(), micros);
    } else if (signal instanceof Signal.Received received) {
      wire.accept(received.bytes(), sentence -> take(sentence, micros));
    } else if (signal instanceof Signal.Closed gone) {
      questions.closed();
      boards.leaves(station);
      watch.closed(gone.why(), micros);
    }
    advance(micros);
  }

  /** What comes from now on is lost, as far as the board doesn't keep it. */
  public void stopListening(long micros) {
    questions.closed();
    watch.notListening(micros);
  }

  /** Does what is due by now. */
  public void advance(long micros) {
    recentFaults.advance(micros);
    questions.advance(micros);
    watch.advance(micros);
    release(micros);
    track.context().ifPresent(c -> questions.fill(c.boot(), c.assembler().wanted(), micros));
    track.settle(micros);
  }

  /** When {@link #advance} has something to do, in micros. */
  public long nextLook() {
    long next = Math.min(questions.nextLook(), watch.nextLook());
    if (track.context().isPresent()) {
      var assembler = track.context().get().assembler();
      next = Math.min(next, held.nextLook());
      next = Math.min(next, assembler.nextLook().orElse(Long.MAX_VALUE));
    }
    return waitingFacts.isEmpty() ? next : Math.min(next, nextFlush);
  }

  /** Whether raw facts have waited long enough for a passage to be written with. */
  public boolean isFlushDue(long micros) {
    if (micros < nextFlush) {
      return false;
    }
    boolean isFirst = nextFlush == NEVER_YET;
    nextFlush = micros + (isFirst ? phase() : FLUSH_MICROS);
    return !isFirst && !waitingFacts.isEmpty();
  }

  /** Stations that began together write at times of their own: no arrow waits for them all. */
  private long phase() {
    return Math.floorMod(station.hashCode() * SCATTER, FLUSH_MICROS);
  }

  /** Nothing more will come: what is open closes. */
  public void end(long micros) {
    if (track.context().isEmpty()) {
      held.firstBoot().ifPresent(boot -> track.assume(UNNAMED, boot, Timing.UNTOLD, micros));
    }
    deliverHeld();
    track.end(micros);
  }

  /** The passages that closed since the last call. */
  public List<ClosedPassage> takeClosed() {
    return track.takeClosed();
  }

  public List<KeyPress> takeKeys() {
    List<KeyPress> taken = List.copyOf(keys);
    keys.clear();
    return taken;
  }

  /** The beats that came since the last call. */
  public List<HeardBeat> takeBeats() {
    List<HeardBeat> taken = List.copyOf(untoldBeats);
    untoldBeats.clear();
    return taken;
  }

  private Listening listening(String source, long micros) {
    return new Listening(store, station, source, hostClock.at(micros), micros);
  }

  private void take(Sentence sentence, long micros) {
    track.giveWay(micros).ifPresent(c -> askEdges(c, micros));
    if (sentence instanceof Heartbeat beat) {
      held.beatHeard();
      watch.beat(beat.levels(), micros);
      HeardBeat now = new HeardBeat(hostClock.at(micros), beat);
      recentBeats.heard(now);
      untoldBeats.add(now);
    }
    if (sentence instanceof Identity identity) {
      identity(identity, micros);
    } else if (track.context().isEmpty() || held.mustHold(sentence, micros)) {
      held.hold(sentence, micros);
    } else {
      deliver(sentence, micros);
    }
    release(micros);
    track.context().ifPresent(c -> boards.hears(station, c.board().id(), micros));
  }

  private void release(long micros) {
    if (track.context().isPresent() && held.isDue(micros)) {
      deliverHeld();
    }
  }

  private void deliverHeld() {
    held.takeAll().forEach(h -> deliver(h.sentence(), h.micros()));
  }

  private void identity(Identity identity, long micros) {
    boolean firstAnswer = questions.identityHeard();
    watch.identified(identity.device());
    if (track.context().isEmpty()) {
      hearEarlierBoots(identity, micros);
    }
    BoardBoot c = track.identified(identity, !firstAnswer, !held.isEmpty(), micros);
    long sinceOpened = track.listening().sinceOpened(micros);
    waitingFacts.identity(track.origin(), identity, sinceOpened);
    keep = identity.keep();
    if (firstAnswer) {
      askEdges(c, micros);
    }
  }

  private void askEdges(BoardBoot c, long micros) {
    questions.askEdges(c.boot(), c.firstNotStored(store, keep), micros);
  }

  /**
   * What came before the board restarted is of the same board, though it hadn't named itself yet.
   */
  private void hearEarlierBoots(Identity identity, long micros) {
    OptionalInt first = held.firstBoot();
    if (first.isPresent() && first.getAsInt() != identity.boot()) {
      track.assume(identity.device(), first.getAsInt(), BoardTrack.timing(identity), micros);
      deliverHeld();
    }
  }

  private void deliver(Sentence sentence, long micros) {
    if (sentence instanceof EdgeSeen edge) {
      follow(edge.boot(), micros);
      track.edge(edge, micros);
    } else if (sentence instanceof Heartbeat beat) {
      follow(beat.boot(), micros);
      track.recognise(beat, micros).ifPresent(c -> askEdges(c, micros));
      waitingFacts.beat(track.origin(), beat, track.listening().sinceOpened(micros));
      track.beat(beat, micros);
    } else if (sentence instanceof Loss loss) {
      faults.count(Fault.DROPPED_BY_BOARD, loss.count());
      follow(loss.boot(), micros);
      waitingFacts.loss(track.origin(), loss);
      track.context().orElseThrow().assembler().dropped(loss.firstTicks(), loss.lastTicks());
    } else if (sentence instanceof Missing missing) {
      follow(missing.boot(), micros);
      waitingFacts.missing(track.origin(), missing);
      track.context().orElseThrow().assembler().missing(missing.first(), missing.last());
    } else if (sentence instanceof Key key) {
      keys.add(new KeyPress(key, hostClock.at(micros)));
    }
  }

  /**
   * A sentence of another boot than the current tells that the board started anew, even when its
   * identity was lost.
   */
  private void follow(int boot, long micros) {
    if (track.isRestart(boot)) {
      track.restarted(boot, micros);
      questions.askIdentity(micros);
    }
  }
}
