package castwell.capture.station;

import castwell.capture.clock.HostClock;
import castwell.capture.clock.MeasuredRates;
import castwell.capture.device.Signal;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Board;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.RawFacts.StoredBeat;
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
  private final Listenings listenings;
  private final WaitingFacts waitingFacts;
  private final HeldSentences held = new HeldSentences();
  private final List<KeyPress> keys = new ArrayList<>();
  private final BoardTrack track;
  private int keep;
  private long nextFlush = NEVER_YET;

  public record KeyPress(Key key, Instant at) {}

  /**
   * What came out of what a station heard.
   *
   * @param links how the link stood, one after another
   */
  public record Heard(
      List<LinkState> links,
      List<HeardBeat> beats,
      List<KeyPress> keys,
      List<ClosedPassage> passages) {}

  public StationInput(
      String station,
      String port,
      Store store,
      BoardsHeard boards,
      CaptureSettings settings,
      HostClock hostClock) {
    this.station = station;
    this.store = store;
    this.boards = boards;
    this.hostClock = hostClock;
    this.listenings = new Listenings(store);
    this.waitingFacts = new WaitingFacts(listenings);
    this.watch = new LinkWatch(station, port, hostClock);
    this.track =
        new BoardTrack(
            station,
            store,
            boards,
            settings,
            hostClock,
            faults,
            waitingFacts,
            listenings,
            new Listening(station, port, hostClock.now(), 0));
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

  /** How fast the board's counter runs, as it is known now. */
  public MeasuredRates rates() {
    return track.rates();
  }

  public Listenings listenings() {
    return listenings;
  }

  /** Beats that were stored before this program began to listen. */
  public void recall(Board board, List<StoredBeat> beats) {
    track.recall(board, beats);
  }

  /** The board shoots in a new session from here on. */
  public void beginSession(Board board) {
    track.beginSession(board);
  }

  public void opened(Signal.Opened opened) {
    long micros = opened.micros();
    wire.reset();
    recentBeats.forget();
    held.opened(micros);
    track.listen(listening(opened.port(), micros));
    watch.opened(opened.port(), micros);
    questions.opened(opened.link(), micros);
  }

  public void closed(Signal.Closed gone) {
    questions.closed();
    boards.leaves(station);
    watch.closed(gone.why(), gone.micros());
  }

  /** The whole sentences that end in these bytes. */
  public List<Sentence> decode(byte[] bytes) {
    return wire.accept(bytes);
  }

  /** Puts together what the board said, and does what is due by now. */
  public void assemble(List<Sentence> sentences, long micros) {
    sentences.forEach(sentence -> take(sentence, micros));
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
    return nextFlush != NEVER_YET && micros >= nextFlush && !waitingFacts.isEmpty();
  }

  /** Raw facts wait anew from here on, where they have waited long enough. */
  public void scheduleFlush(long micros) {
    if (micros >= nextFlush) {
      nextFlush = micros + (nextFlush == NEVER_YET ? phase() : FLUSH_MICROS);
    }
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

  /** What came out since the last call. */
  public Heard takeHeard() {
    Heard heard =
        new Heard(
            watch.takeChanges(), List.copyOf(untoldBeats), List.copyOf(keys), track.takeClosed());
    untoldBeats.clear();
    keys.clear();
    return heard;
  }

  private Listening listening(String source, long micros) {
    return new Listening(station, source, hostClock.at(micros), micros);
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
    boolean firstAnswer = questions.noteIdentity();
    watch.identified(identity.device());
    if (track.context().isEmpty()) {
      hearEarlierBoots(identity, micros);
    }
    BoardBoot c = track.identified(identity, !firstAnswer, !held.isEmpty(), micros);
    waitingFacts.add(track.origin(), identity, micros);
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
      noticeRestart(edge.boot(), micros);
      track.edge(edge, micros);
    } else if (sentence instanceof Heartbeat beat) {
      noticeRestart(beat.boot(), micros);
      track.recognise(beat, micros).ifPresent(c -> askEdges(c, micros));
      waitingFacts.add(track.origin(), beat, micros);
      track.beat(beat, micros);
    } else if (sentence instanceof Loss loss) {
      faults.count(Fault.DROPPED_BY_BOARD, loss.count());
      noticeRestart(loss.boot(), micros);
      waitingFacts.add(track.origin(), loss, micros);
      track.context().orElseThrow().assembler().dropped(loss.firstTicks(), loss.lastTicks());
    } else if (sentence instanceof Missing missing) {
      noticeRestart(missing.boot(), micros);
      waitingFacts.add(track.origin(), missing, micros);
      track.context().orElseThrow().assembler().missing(missing.first(), missing.last());
    } else if (sentence instanceof Key key) {
      keys.add(new KeyPress(key, hostClock.at(micros)));
    }
  }

  /**
   * A sentence of another boot than the current tells that the board started anew, even when its
   * identity was lost.
   */
  private void noticeRestart(int boot, long micros) {
    if (track.isRestart(boot)) {
      track.restarted(boot, micros);
      questions.askIdentity(micros);
    }
  }
}
