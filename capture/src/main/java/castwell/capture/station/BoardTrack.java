package castwell.capture.station;

import castwell.analysis.shot.Passage;
import castwell.capture.clock.BoardClock;
import castwell.capture.clock.HostClock;
import castwell.capture.clock.MeasuredRates;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Board;
import castwell.capture.store.RawFacts.StoredBeat;
import castwell.capture.store.RawFacts.StoredEdge;
import castwell.capture.store.RawFacts.Timing;
import castwell.capture.store.Store;
import castwell.capture.wire.Fault;
import castwell.capture.wire.Faults;
import castwell.capture.wire.Sentence.EdgeSeen;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.Sentence.Surroundings;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The board that a station hears, through its boots: edges go to the boot they are of, and come out
 * as closed passages with their date.
 */
final class BoardTrack {
  /** Of the beats before a session began, so many stretches still count in it. */
  private static final int STRETCHES_BEFORE_A_SESSION = 2;

  private static final OptionalInt NONE = OptionalInt.empty();
  private static final Surroundings NOTHING_MEASURED =
      new Surroundings(NONE, NONE, NONE, NONE, NONE, NONE);

  private final String station;
  private final Store store;
  private final BoardSeries series;
  private final CaptureSettings settings;
  private final HostClock hostClock;
  private final Faults faults;
  private final WaitingFacts waitingFacts;
  private final Listenings listenings;
  private final List<ClosedPassage> closed = new ArrayList<>();
  private Optional<BoardBoot> context = Optional.empty();
  private BoardClock clock = new BoardClock();
  private Listening listening;
  private Surroundings surroundings = NOTHING_MEASURED;

  private boolean sawItStart;

  /** Whether it is certain by now which of the boards of that name this is. */
  private boolean recognised;

  BoardTrack(
      String station,
      Store store,
      BoardsHeard heard,
      CaptureSettings settings,
      HostClock hostClock,
      Faults faults,
      WaitingFacts waitingFacts,
      Listenings listenings,
      Listening listening) {
    this.station = station;
    this.store = store;
    this.series = new BoardSeries(store, heard, station);
    this.settings = settings;
    this.hostClock = hostClock;
    this.faults = faults;
    this.waitingFacts = waitingFacts;
    this.listenings = listenings;
    this.listening = listening;
  }

  void listen(Listening anew) {
    listening = anew;
  }

  Listening listening() {
    return listening;
  }

  Optional<BoardBoot> context() {
    return context;
  }

  /** How fast the board's counter runs, as it is known now. */
  MeasuredRates rates() {
    return clock.measured();
  }

  /** Beats from before this program began to listen tell the rate of the board's counter too. */
  void recall(Board board, List<StoredBeat> beats) {
    if (isHeard(board)) {
      beats.forEach(clock::beat);
    }
  }

  /** What the beats told long before a session says little of it. */
  void beginSession(Board board) {
    if (isHeard(board)) {
      clock.keepNewest(STRETCHES_BEFORE_A_SESSION);
    }
  }

  private boolean isHeard(Board board) {
    return context.map(c -> c.board().id() == board.id()).orElse(false);
  }

  /**
   * The board said who it is.
   *
   * @param connectedBefore whether this link has heard it before, so that a start was witnessed
   * @param heardBefore whether this boot said other things already; line 0 comes again by wrapping
   */
  BoardBoot identified(
      Identity identity, boolean connectedBefore, boolean heardBefore, long micros) {
    Optional<BoardBoot> same = context.filter(c -> c.board().device().equals(identity.device()));
    if (same.map(c -> c.boot() != identity.boot()).orElse(true)) {
      close(same.isPresent(), micros);
      Board board =
          same.map(BoardBoot::board).orElseGet(() -> series.findOrBegin(identity.device(), micros));
      boolean firstLine = identity.line() == 0 && !heardBefore;
      boolean witnessed = firstLine || same.isPresent() && connectedBefore;
      open(board, identity.boot(), timing(identity), witnessed);
    }
    return context.orElseThrow();
  }

  static Timing timing(Identity identity) {
    return new Timing(identity.hz(), identity.latencyANs(), identity.latencyBNs());
  }

  /** It didn't say who it is, as far as anyone heard. */
  void assume(String device, int boot, Timing timing, long micros) {
    open(series.findOrBegin(device, micros), boot, timing, false);
  }

  /** Another boot than the current: the board started anew, and its identity was lost. */
  boolean isRestart(int boot) {
    return context.orElseThrow().boot() != boot;
  }

  void restarted(int boot, long micros) {
    BoardBoot before = context.orElseThrow();
    close(true, micros);
    open(before.board(), boot, before.timing(), true);
  }

  void edge(EdgeSeen edge, long micros) {
    BoardBoot c = context.orElseThrow();
    Optional<StoredEdge> known = c.known(store, edge.number());
    if (known.isEmpty()) {
      int missing =
          c.assembler()
              .edge(edge.number(), edge.gate(), edge.kind(), edge.ticks(), edge.late(), micros);
      faults.count(Fault.EDGE_GAP, missing);
    } else if (BoardSeries.isSame(known.get(), edge)) {
      faults.count(Fault.REPEATED_EDGE);
    } else {
      takeForAnother(series.findOrBegin(c.board(), edge, used(edge.boot()), micros), micros);
      edge(edge, micros);
    }
    recognised = true;
  }

  /**
   * A boot's first beat tells whether it can be the board that it was taken for.
   *
   * @return where it is another of that name: that one
   */
  Optional<BoardBoot> recognise(Heartbeat beat, long micros) {
    BoardBoot c = context.orElseThrow();
    if (recognised) {
      return Optional.empty();
    }
    Board board = series.findOrBegin(c.board(), beat, used(beat.boot()), micros);
    boolean another = board.id() != c.board().id();
    if (another) {
      takeForAnother(board, micros);
    }
    recognised = true;
    return another ? context : Optional.empty();
  }

  /**
   * While this station was silent, another began to hear the board that this one was taken for.
   *
   * @return where that is so: the board that it is taken for now
   */
  Optional<BoardBoot> giveWay(long micros) {
    boolean taken = context.map(c -> series.isElsewhere(c.board(), micros)).orElse(false);
    if (taken) {
      BoardBoot c = context.orElseThrow();
      takeForAnother(series.findOrBeginUnused(c.board(), c.boot(), used(c.boot()), micros), micros);
    }
    return taken ? context : Optional.empty();
  }

  /** Boards with edges of that boot that may be on their way to the store. */
  private Set<Board> used(int boot) {
    Set<Board> used =
        closed.stream()
            .filter(passage -> passage.boot() == boot)
            .map(ClosedPassage::board)
            .collect(Collectors.toSet());
    context
        .filter(c -> c.boot() == boot && c.assembler().hasEdges())
        .ifPresent(c -> used.add(c.board()));
    return used;
  }

  private void takeForAnother(Board board, long micros) {
    faults.count(Fault.NAME_REUSED);
    close(false, micros);
    waitingFacts.move(origin(), board.id());
    BoardBoot taken = context.orElseThrow();
    open(board, taken.boot(), taken.timing(), sawItStart);
  }

  WaitingFacts.Origin origin() {
    BoardBoot c = context.orElseThrow();
    return new WaitingFacts.Origin(c.board().id(), c.boot(), listening);
  }

  void beat(Heartbeat beat, long micros) {
    BoardBoot c = context.orElseThrow();
    surroundings = beat.surroundings();
    clock.beat(
        c.boot(),
        listenings.enter(listening),
        beat.ticks48(),
        beat.queued(),
        beat.bytes(),
        listening.sinceOpened(micros));
    faults.count(Fault.EDGE_GAP, c.assembler().beat(beat.edges(), beat.ticks48(), micros));
  }

  void settle(long micros) {
    context.ifPresent(c -> giveOut(c, c.assembler().settle(micros), micros));
  }

  /** Whatever is open closes. */
  void end(long micros) {
    close(false, micros);
  }

  List<ClosedPassage> takeClosed() {
    List<ClosedPassage> taken = List.copyOf(closed);
    closed.clear();
    return taken;
  }

  private void open(Board board, int boot, Timing timing, boolean sawItStart) {
    if (context.map(c -> c.board().id() != board.id()).orElse(true)) {
      clock = new BoardClock();
    }
    BoardBoot opened = BoardBoot.open(store, settings, board, boot, timing);
    if (sawItStart) {
      opened.assembler().startedNow();
    }
    context = Optional.of(opened);
    this.sawItStart = sawItStart;
    recognised = false;
  }

  private void close(boolean boardRestarted, long micros) {
    if (boardRestarted) {
      faults.count(Fault.BOARD_RESTARTED);
    }
    settle(micros); // what went through in time wasn't cut short by the restart
    context.ifPresent(c -> giveOut(c, c.assembler().close(boardRestarted), micros));
  }

  private void giveOut(BoardBoot c, List<Passage> passages, long micros) {
    for (Passage passage : passages) {
      faults.count(Fault.LOST_EDGE, passage.lostEdges().size());
      OptionalLong stamped = stamped(c, passage);
      closed.add(
          new ClosedPassage(
              station,
              c.board(),
              c.boot(),
              listening,
              c.timing(),
              passage,
              stamped.orElse(0),
              fired(c, stamped, micros),
              clock.measured(),
              settings.air().density(surroundings)));
    }
  }

  private static OptionalLong stamped(BoardBoot c, Passage passage) {
    return passage.edges().isEmpty()
        ? c.assembler().stampedBy(passage)
        : OptionalLong.of(passage.edges().get(0).ticks());
  }

  private Instant fired(BoardBoot c, OptionalLong firstTicks, long micros) {
    OptionalDouble stamped =
        firstTicks.isEmpty() || listenings.row(listening).isEmpty()
            ? OptionalDouble.empty()
            : clock.microsAt(
                c.boot(),
                listenings.row(listening).getAsLong(),
                firstTicks.getAsLong(),
                c.timing().hz());
    return hostClock.at(
        stamped.isPresent() ? Math.min(micros, listening.micros(stamped.getAsDouble())) : micros);
  }
}
