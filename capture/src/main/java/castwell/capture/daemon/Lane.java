package castwell.capture.daemon;

import castwell.analysis.shot.Passage;
import castwell.capture.device.Signal;
import castwell.capture.store.Board;
import castwell.capture.store.RawFacts.StoredEdge;
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
import castwell.capture.wire.Sentence.Surroundings;
import castwell.capture.wire.WireReader;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;

/** One station: bytes from its board to closed passages, hops one and two. Used by one thread. */
final class Lane {
  private static final long FLUSH_MICROS = 30_000_000;
  private static final Surroundings NOTHING_MEASURED =
      new Surroundings(
          OptionalInt.empty(),
          OptionalInt.empty(),
          OptionalInt.empty(),
          OptionalInt.empty(),
          OptionalInt.empty(),
          OptionalInt.empty());

  private final String station;
  private final Store store;
  private final CaptureSettings settings;
  private final HostClock hostClock;
  private final Faults faults = new Faults();
  private final WireReader wire = new WireReader(faults);
  private final Asker asker = new Asker();
  private final LinkWatch watch;
  private final FactBuffer facts = new FactBuffer();
  private final HeldSentences held = new HeldSentences();
  private final List<ClosedPassage> closed = new ArrayList<>();
  private final List<KeyPress> keys = new ArrayList<>();

  private Optional<LaneContext> context = Optional.empty();
  private BoardClock boardClock = new BoardClock();
  private String source;
  private long openedMicros;
  private long listening;
  private boolean listeningKnown;
  private Surroundings surroundings = NOTHING_MEASURED;
  private long nextFlush = FLUSH_MICROS;

  record KeyPress(Key key, Instant at) {}

  Lane(
      String station,
      String port,
      Store store,
      CaptureSettings settings,
      HostClock hostClock,
      Consumer<LinkState> listener) {
    this.station = station;
    this.store = store;
    this.settings = settings;
    this.hostClock = hostClock;
    this.source = port;
    this.watch = new LinkWatch(station, port, hostClock, listener);
  }

  String station() {
    return station;
  }

  LinkState link() {
    return watch.state();
  }

  Faults faults() {
    return faults;
  }

  FactBuffer facts() {
    return facts;
  }

  /** Takes in what the station's reader tells. */
  void hear(Signal signal) {
    if (signal instanceof Signal.Opened opened) {
      wire.reset();
      held.opened(opened.micros());
      listenAnew(opened.port(), opened.micros());
      watch.opened(opened.port(), opened.micros());
      asker.opened(opened.link(), opened.micros());
    } else if (signal instanceof Signal.Received received) {
      wire.accept(received.bytes(), sentence -> sentence(sentence, received.micros()));
    } else if (signal instanceof Signal.Closed gone) {
      asker.closed();
      watch.closed(gone.sentence(), gone.micros());
    }
    advance(signal.micros());
  }

  /** Does what is due by now. */
  void advance(long micros) {
    asker.advance(micros);
    watch.advance(micros);
    release(micros);
    context.ifPresent(
        c -> {
          asker.fill(c.boot(), c.assembler().wanted(), micros);
          giveOut(c, c.assembler().settle(micros), micros);
        });
  }

  /** When {@link #advance} has something to do, in micros. */
  long nextLook() {
    long next = Math.min(asker.nextLook(), watch.nextLook());
    next = Math.min(next, context.isPresent() ? held.nextLook() : Long.MAX_VALUE);
    next = Math.min(next, context.flatMap(c -> optional(c)).orElse(Long.MAX_VALUE));
    return facts.isEmpty() ? next : Math.min(next, nextFlush);
  }

  private static Optional<Long> optional(LaneContext c) {
    var look = c.assembler().nextLook();
    return look.isPresent() ? Optional.of(look.getAsLong()) : Optional.empty();
  }

  /** Whether raw facts have waited long enough for a passage to be written with. */
  boolean isFlushDue(long micros) {
    if (micros < nextFlush) {
      return false;
    }
    nextFlush = micros + FLUSH_MICROS;
    return !facts.isEmpty();
  }

  Optional<Board> board() {
    return context.map(LaneContext::board);
  }

  BoardClock boardClock() {
    return boardClock;
  }

  /** Nothing more will come: what is open closes. */
  void end(long micros) {
    if (context.isEmpty() && !held.isEmpty()) {
      int boot = held.boot();
      open(board("unnamed"), boot, new Timing(2_000_000, 0, 0), false);
    }
    held.takeAll().forEach(h -> deliver(h.sentence(), h.micros()));
    context.ifPresent(c -> giveOut(c, c.assembler().close(false), micros));
  }

  /** The passages that closed since the last call. */
  List<ClosedPassage> takeClosed() {
    List<ClosedPassage> taken = List.copyOf(closed);
    closed.clear();
    return taken;
  }

  List<KeyPress> takeKeys() {
    List<KeyPress> taken = List.copyOf(keys);
    keys.clear();
    return taken;
  }

  private void listenAnew(String port, long micros) {
    source = port;
    openedMicros = micros;
    listeningKnown = false;
  }

  private void sentence(Sentence sentence, long micros) {
    if (sentence instanceof Heartbeat beat) {
      held.beatHeard();
      watch.beat(beat.levels(), micros);
    }
    if (sentence instanceof Identity identity) {
      identity(identity, micros);
    } else if (context.isEmpty() || held.mustHold(sentence, micros)) {
      held.hold(sentence, micros);
    } else {
      deliver(sentence, micros);
    }
    release(micros);
  }

  private void release(long micros) {
    if (context.isPresent() && held.isDue(micros)) {
      held.takeAll().forEach(h -> deliver(h.sentence(), h.micros()));
    }
  }

  private void deliver(Sentence sentence, long micros) {
    if (sentence instanceof EdgeSeen edge) {
      edge(current(edge.boot(), micros), edge, micros);
    } else if (sentence instanceof Heartbeat beat) {
      beat(current(beat.boot(), micros), beat, micros);
    } else if (sentence instanceof Loss loss) {
      faults.count(Fault.DROPPED_BY_BOARD, loss.count());
      facts.loss(current(loss.boot(), micros).board().id(), loss);
    } else if (sentence instanceof Missing missing) {
      LaneContext c = current(missing.boot(), micros);
      facts.missing(c.board().id(), missing);
      c.assembler().missing(missing.first(), missing.last());
    } else if (sentence instanceof Key key) {
      keys.add(new KeyPress(key, hostClock.at(micros)));
    }
  }

  private void identity(Identity identity, long micros) {
    boolean firstAnswer = asker.identityHeard();
    watch.identified(identity.device());
    Timing timing = new Timing(identity.hz(), identity.latencyANs(), identity.latencyBNs());
    boolean sameDevice =
        context.map(c -> c.board().device().equals(identity.device())).orElse(false);
    boolean sameBoot = sameDevice && context.orElseThrow().boot() == identity.boot();
    if (!sameBoot) {
      close(sameDevice, micros);
      Board board = sameDevice ? context.orElseThrow().board() : board(identity.device());
      boolean sawItStart = identity.line() == 0 || sameDevice && !firstAnswer;
      open(board, identity.boot(), timing, sawItStart);
    }
    LaneContext c = context.orElseThrow();
    facts.identity(c.board().id(), listening(), identity, micros - openedMicros);
    if (firstAnswer) {
      asker.askEdges(c.boot(), c.firstNotStored(store, identity.keep()), micros);
    }
  }

  /** The context of a boot; another boot than the current means that the board started anew. */
  private LaneContext current(int boot, long micros) {
    LaneContext c = context.orElseThrow();
    if (c.boot() != boot) {
      close(true, micros);
      asker.askIdentity(micros);
      open(c.board(), boot, c.timing(), true);
    }
    return context.orElseThrow();
  }

  private void edge(LaneContext c, EdgeSeen edge, long micros) {
    Optional<StoredEdge> known = c.known(store, edge.number());
    if (known.isEmpty()) {
      int missing =
          c.assembler()
              .edge(edge.number(), edge.gate(), edge.kind(), edge.ticks(), edge.late(), micros);
      faults.count(Fault.EDGE_GAP, missing);
    } else if (isSame(known.get(), edge)) {
      faults.count(Fault.REPEATED_EDGE);
    } else {
      faults.count(Fault.NAME_REUSED);
      close(false, micros);
      open(BoardSeries.of(store, c.board(), edge), c.boot(), c.timing(), true);
      edge(context.orElseThrow(), edge, micros);
    }
  }

  static boolean isSame(StoredEdge stored, EdgeSeen edge) {
    return stored.gate() == edge.gate()
        && stored.kind() == edge.kind()
        && stored.ticks() == edge.ticks();
  }

  private void beat(LaneContext c, Heartbeat beat, long micros) {
    surroundings = beat.surroundings();
    long sinceOpened = micros - openedMicros;
    facts.beat(c.board().id(), listening(), beat, sinceOpened);
    boardClock.beat(
        c.boot(), listening(), beat.ticks48(), beat.queued(), beat.bytes(), sinceOpened);
    faults.count(Fault.EDGE_GAP, c.assembler().beat(beat.edges(), beat.ticks48(), micros));
  }

  private Board board(String device) {
    return store
        .read(t -> t.boards().named(device).stream().findFirst())
        .orElseGet(() -> store.write(t -> t.boards().begin(device)));
  }

  private long listening() {
    if (!listeningKnown) {
      Instant opened = hostClock.at(openedMicros);
      listening = store.write(t -> t.boards().listening(station, source, opened));
      listeningKnown = true;
    }
    return listening;
  }

  private void open(Board board, int boot, Timing timing, boolean sawItStart) {
    if (context.map(c -> c.board().id() != board.id()).orElse(true)) {
      boardClock = new BoardClock();
    }
    LaneContext opened = LaneContext.open(store, settings, board, boot, timing);
    if (sawItStart) {
      opened.assembler().startedNow();
    }
    context = Optional.of(opened);
  }

  private void close(boolean boardRestarted, long micros) {
    context.ifPresent(
        c -> {
          if (boardRestarted) {
            faults.count(Fault.BOARD_RESTARTED);
          }
          giveOut(c, c.assembler().close(boardRestarted), micros);
        });
  }

  private void giveOut(LaneContext c, List<Passage> passages, long micros) {
    for (Passage passage : passages) {
      faults.count(Fault.LOST_EDGE, passage.lostEdges().size());
      long firstTicks = passage.edges().isEmpty() ? 0 : passage.edges().get(0).ticks();
      closed.add(
          new ClosedPassage(
              station,
              c.board(),
              c.boot(),
              listening(),
              c.timing(),
              passage,
              firstTicks,
              fired(c, passage, firstTicks, micros),
              boardClock,
              settings.air().density(surroundings)));
    }
  }

  private Instant fired(LaneContext c, Passage passage, long firstTicks, long micros) {
    if (passage.edges().isEmpty()) {
      return hostClock.at(micros);
    }
    double stamped =
        boardClock
            .microsAt(c.boot(), listening(), firstTicks, c.timing().hz())
            .orElse(micros - openedMicros);
    return hostClock.at(Math.min(micros, openedMicros + Math.round(stamped)));
  }
}
