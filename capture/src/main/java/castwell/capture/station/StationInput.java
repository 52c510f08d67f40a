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

/**
 * One station's input: it turns bytes from the board into closed passages, hops one and two. One
 * thread uses it.
 */
public final class StationInput {
  private static final long FLUSH_MICROS = 30_000_000;
  private static final long NEVER_YET = Long.MIN_VALUE;

  /**
   * An odd number near 2^64 over the golden ratio, by which names that are alike scatter (Knuth,
   * 6.4).
   */
  private static final long SCATTER = 0x9E37_79B9_7F4A_7C15L;

  /** The name for a board that never said who it is. */
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
   * What came out of the sentences that a station heard.
   *
   * @param links the states of the link, the newest last
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
    return track.current().map(BoardBoot::board);
  }

  /** How fast the board's counter runs, as far as it is known now. */
  public MeasuredRates rates() {
    return track.rates();
  }

  public Listenings listenings() {
    return listenings;
  }

  /** Takes in beats that were stored before this program began to listen. */
  public void recall(Board board, List<StoredBeat> beats) {
    track.recall(board, beats);
  }

  /** Notes that the board shoots in a new session from now on. */
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
    boards.forget(station);
    watch.closed(gone.why(), gone.micros());
  }

  /** Reads bytes on, and returns the whole sentences that end in them. */
  public List<Sentence> decode(byte[] bytes) {
    return wire.accept(bytes);
  }

  /** Puts together what the board said, and does what is due by now. */
  public void assemble(List<Sentence> sentences, long micros) {
    sentences.forEach(sentence -> take(sentence, micros));
    advance(micros);
  }

  /** Stops listening. What comes from now on is lost, as far as the board doesn't keep it. */
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
    track
        .current()
        .ifPresent(current -> questions.fill(current.boot(), current.assembler().wanted(), micros));
    track.settle(micros);
  }

  /** When {@link #advance} has something to do, in micros. */
  public long nextLook() {
    long next = Math.min(questions.nextLook(), watch.nextLook());
    if (track.current().isPresent()) {
      var assembler = track.current().get().assembler();
      next = Math.min(next, held.nextLook());
      next = Math.min(next, assembler.nextLook().orElse(Long.MAX_VALUE));
    }
    return waitingFacts.isEmpty() ? next : Math.min(next, nextFlush);
  }

  /** Whether raw facts have waited long enough for a passage and should be written without one. */
  public boolean isFlushDue(long micros) {
    return nextFlush != NEVER_YET && micros >= nextFlush && !waitingFacts.isEmpty();
  }

  /** Sets the time of the next flush, where that of the last one has come. */
  public void scheduleFlush(long micros) {
    if (micros >= nextFlush) {
      nextFlush = micros + (nextFlush == NEVER_YET ? phase() : FLUSH_MICROS);
    }
  }

  /**
   * The first wait, which differs from station to station, so that those which began together flush
   * at different times and no arrow waits for them all.
   */
  private long phase() {
    return Math.floorMod(station.hashCode() * SCATTER, FLUSH_MICROS);
  }

  /** Closes what is open, since nothing more will come. */
  public void end(long micros) {
    if (track.current().isEmpty()) {
      held.firstBoot().ifPresent(boot -> track.assume(UNNAMED, boot, Timing.UNTOLD, micros));
    }
    deliverHeld();
    track.end(micros);
  }

  /** Takes out what came out since the last call. */
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
    track.giveWay(micros).ifPresent(current -> askEdges(current, micros));
    if (sentence instanceof Heartbeat beat) {
      held.noteBeat();
      watch.noteBeat(beat.levels(), micros);
      HeardBeat now = new HeardBeat(hostClock.at(micros), beat);
      recentBeats.add(now);
      untoldBeats.add(now);
    }
    if (sentence instanceof Identity identity) {
      takeIdentity(identity, micros);
    } else if (track.current().isEmpty() || held.mustHold(sentence, micros)) {
      held.hold(sentence, micros);
    } else {
      deliver(sentence, micros);
    }
    release(micros);
    track.current().ifPresent(current -> boards.note(station, current.board().id(), micros));
  }

  private void release(long micros) {
    if (track.current().isPresent() && held.isDue(micros)) {
      deliverHeld();
    }
  }

  private void deliverHeld() {
    held.takeAll().forEach(h -> deliver(h.sentence(), h.micros()));
  }

  private void takeIdentity(Identity identity, long micros) {
    boolean firstAnswer = questions.noteIdentity();
    watch.identified(identity.device());
    if (track.current().isEmpty()) {
      hearEarlierBoots(identity, micros);
    }
    BoardBoot current = track.identified(identity, !firstAnswer, !held.isEmpty(), micros);
    waitingFacts.add(track.origin(), identity, micros);
    keep = identity.keep();
    if (firstAnswer) {
      askEdges(current, micros);
    }
  }

  private void askEdges(BoardBoot current, long micros) {
    questions.askEdges(current.boot(), current.firstNotStored(store, keep), micros);
  }

  /**
   * Delivers sentences of an earlier boot, which are of the same board although it hadn't named
   * itself before it restarted.
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
      track.takeEdge(edge, micros);
    } else if (sentence instanceof Heartbeat beat) {
      noticeRestart(beat.boot(), micros);
      track.recognise(beat, micros).ifPresent(current -> askEdges(current, micros));
      waitingFacts.add(track.origin(), beat, micros);
      track.takeBeat(beat, micros);
    } else if (sentence instanceof Loss loss) {
      faults.count(Fault.DROPPED_BY_BOARD, loss.count());
      noticeRestart(loss.boot(), micros);
      waitingFacts.add(track.origin(), loss, micros);
      track.current().orElseThrow().assembler().noteDropped(loss.firstTicks(), loss.lastTicks());
    } else if (sentence instanceof Missing missing) {
      noticeRestart(missing.boot(), micros);
      waitingFacts.add(track.origin(), missing, micros);
      track.current().orElseThrow().assembler().giveUp(missing.first(), missing.last());
    } else if (sentence instanceof Key key) {
      keys.add(new KeyPress(key, hostClock.at(micros)));
    }
  }

  /**
   * Notices by a sentence of another boot that the board started anew, even when its identity was
   * lost.
   */
  private void noticeRestart(int boot, long micros) {
    if (track.isRestart(boot)) {
      track.restarted(boot, micros);
      questions.askIdentity(micros);
    }
  }
}
