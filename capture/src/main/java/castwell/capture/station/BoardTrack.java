package castwell.capture.station;

import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Calibration;
import castwell.capture.assembly.Gates;
import castwell.capture.clock.BoardClock;
import castwell.capture.clock.HostClock;
import castwell.capture.clock.MeasuredRates;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Board;
import castwell.capture.store.Calibrations;
import castwell.capture.store.RawFacts.StoredBeat;
import castwell.capture.store.RawFacts.StoredEdge;
import castwell.capture.store.RawFacts.Timing;
import castwell.capture.store.Store;
import castwell.capture.store.StoreUnavailable;
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
 * Follows the board that a station hears through its boots. Edges go to the boot they are of, and
 * come out as closed passages with their date.
 */
final class BoardTrack {
  /** How many stretches of beats from before a session still count in it. */
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
  private Optional<BoardBoot> current = Optional.empty();
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

  Optional<BoardBoot> current() {
    return current;
  }

  /** How fast the board's counter runs, as far as it is known now. */
  MeasuredRates rates() {
    return clock.measured();
  }

  /**
   * Takes in beats from before this program began to listen, since they tell the rate of the
   * board's counter too.
   */
  void recall(Board board, List<StoredBeat> beats) {
    if (isHeard(board)) {
      beats.forEach(clock::add);
    }
  }

  /** Forgets beats from long before the session, since they say little of the rate in it. */
  void beginSession(Board board) {
    if (isHeard(board)) {
      clock.keepNewest(STRETCHES_BEFORE_A_SESSION);
    }
  }

  private boolean isHeard(Board board) {
    return current.map(now -> now.board().id() == board.id()).orElse(false);
  }

  /**
   * Takes in that the board said who it is.
   *
   * @param connectedBefore whether the board was heard over this link before, so that a new boot's
   *     start was witnessed
   * @param heardBefore whether this boot said other things already, so that its line 0 came by
   *     wrapping
   */
  BoardBoot identified(
      Identity identity, boolean connectedBefore, boolean heardBefore, long micros) {
    Optional<BoardBoot> same =
        current.filter(now -> now.board().device().equals(identity.device()));
    if (same.map(now -> now.boot() != identity.boot()).orElse(true)) {
      close(same.isPresent(), micros);
      Board board =
          same.map(BoardBoot::board).orElseGet(() -> series.findOrBegin(identity.device(), micros));
      boolean firstLine = identity.line() == 0 && !heardBefore;
      boolean witnessed = firstLine || same.isPresent() && connectedBefore;
      open(board, identity.boot(), timing(identity), witnessed, micros);
    }
    return current.orElseThrow();
  }

  static Timing timing(Identity identity) {
    return new Timing(identity.hz(), identity.latencyANs(), identity.latencyBNs());
  }

  /** Assumes a board that wasn't heard to say who it is. */
  void assume(String device, int boot, Timing timing, long micros) {
    open(series.findOrBegin(device, micros), boot, timing, false, micros);
  }

  /**
   * Whether a sentence's boot isn't the current one, so that the board started anew and its
   * identity was lost.
   */
  boolean isRestart(int boot) {
    return current.orElseThrow().boot() != boot;
  }

  void restarted(int boot, long micros) {
    BoardBoot before = current.orElseThrow();
    close(true, micros);
    open(before.board(), boot, before.timing(), true, micros);
  }

  void takeEdge(EdgeSeen edge, long micros) {
    BoardBoot now = current.orElseThrow();
    Optional<StoredEdge> known = now.known(store, edge.number());
    if (known.isEmpty()) {
      lookAtGates(now, micros);
      int missing =
          now.assembler()
              .addEdge(edge.number(), edge.gate(), edge.kind(), edge.ticks(), edge.late(), micros);
      faults.count(Fault.EDGE_GAP, missing);
    } else if (BoardSeries.isSame(known.get(), edge)) {
      faults.count(Fault.REPEATED_EDGE);
    } else {
      takeForAnother(series.findOrBegin(now.board(), edge, used(edge.boot()), micros), micros);
      takeEdge(edge, micros);
    }
    recognised = true;
  }

  /**
   * Lets each object be told apart by the gates as they stand when it comes. While the store can't
   * be read, they stand as they did.
   */
  private void lookAtGates(BoardBoot now, long micros) {
    if (now.assembler().isSettled()) {
      try {
        now.assembler().stand(gates(now.timing(), micros));
      } catch (StoreUnavailable e) {
        // Whatever comes of it waits until the store can be read, which is told there.
      }
    }
  }

  private Gates gates(Timing timing, long micros) {
    Calibration calibration =
        store
            .read(t -> t.calibrations().inForce(station, hostClock.at(micros)))
            .map(Calibrations.Entry::calibration)
            .orElse(settings.gates());
    return new Gates(calibration, settings.limits(), timing.latency(), timing.hz());
  }

  /**
   * Uses a boot's first beat to tell whether the board can be the one it was taken for.
   *
   * @return the boot of another board of that name, where it is another; else empty
   */
  Optional<BoardBoot> recognise(Heartbeat beat, long micros) {
    BoardBoot now = current.orElseThrow();
    if (recognised) {
      return Optional.empty();
    }
    Board board = series.findOrBegin(now.board(), beat, used(beat.boot()), micros);
    boolean another = board.id() != now.board().id();
    if (another) {
      takeForAnother(board, micros);
    }
    recognised = true;
    return another ? current : Optional.empty();
  }

  /**
   * Takes the board for another one where a second station began, while this one was silent, to
   * hear the board that it was taken for.
   *
   * @return the boot of the board that it is taken for now, where that changed; else empty
   */
  Optional<BoardBoot> giveWay(long micros) {
    boolean taken = current.map(now -> series.isElsewhere(now.board(), micros)).orElse(false);
    if (taken) {
      BoardBoot now = current.orElseThrow();
      takeForAnother(
          series.findOrBeginUnused(now.board(), now.boot(), used(now.boot()), micros), micros);
    }
    return taken ? current : Optional.empty();
  }

  /** The boards with edges of that boot that may still be on their way to the store. */
  private Set<Board> used(int boot) {
    Set<Board> used =
        closed.stream()
            .filter(passage -> passage.boot() == boot)
            .map(ClosedPassage::board)
            .collect(Collectors.toSet());
    current
        .filter(now -> now.boot() == boot && now.assembler().hasEdges())
        .ifPresent(now -> used.add(now.board()));
    return used;
  }

  private void takeForAnother(Board board, long micros) {
    faults.count(Fault.NAME_REUSED);
    close(false, micros);
    waitingFacts.move(origin(), board.id());
    BoardBoot taken = current.orElseThrow();
    open(board, taken.boot(), taken.timing(), sawItStart, micros);
  }

  WaitingFacts.Origin origin() {
    BoardBoot now = current.orElseThrow();
    return new WaitingFacts.Origin(now.board().id(), now.boot(), listening);
  }

  void takeBeat(Heartbeat beat, long micros) {
    BoardBoot now = current.orElseThrow();
    surroundings = beat.surroundings();
    clock.add(
        now.boot(),
        listenings.enter(listening),
        beat.ticks48(),
        beat.queued(),
        beat.bytes(),
        listening.sinceOpened(micros));
    faults.count(Fault.EDGE_GAP, now.assembler().addBeat(beat.edges(), beat.ticks48(), micros));
  }

  void settle(long micros) {
    current.ifPresent(now -> giveOut(now, now.assembler().settle(micros), micros));
  }

  /** Closes whatever is open. */
  void end(long micros) {
    close(false, micros);
  }

  List<ClosedPassage> takeClosed() {
    List<ClosedPassage> taken = List.copyOf(closed);
    closed.clear();
    return taken;
  }

  private void open(Board board, int boot, Timing timing, boolean sawItStart, long micros) {
    if (current.map(now -> now.board().id() != board.id()).orElse(true)) {
      clock = new BoardClock();
    }
    Gates gates = gates(timing, micros);
    BoardBoot opened = BoardBoot.open(store, settings.timing(), gates, board, boot, timing);
    if (sawItStart) {
      opened.assembler().noteStart();
    }
    current = Optional.of(opened);
    this.sawItStart = sawItStart;
    recognised = false;
  }

  private void close(boolean boardRestarted, long micros) {
    if (boardRestarted) {
      faults.count(Fault.BOARD_RESTARTED);
    }
    settle(micros); // What went through in time wasn't cut short by the restart.
    current.ifPresent(now -> giveOut(now, now.assembler().close(boardRestarted), micros));
  }

  private void giveOut(BoardBoot now, List<Passage> passages, long micros) {
    for (Passage passage : passages) {
      faults.count(Fault.LOST_EDGE, passage.lostEdges().size());
      OptionalLong stamped = stamped(now, passage);
      closed.add(
          new ClosedPassage(
              station,
              now.board(),
              now.boot(),
              listening,
              now.timing(),
              passage,
              stamped.orElse(0),
              fired(now, stamped, micros),
              clock.measured(),
              settings.air().density(surroundings)));
    }
  }

  private static OptionalLong stamped(BoardBoot now, Passage passage) {
    return passage.edges().isEmpty()
        ? now.assembler().stampedBy(passage)
        : OptionalLong.of(passage.edges().get(0).ticks());
  }

  private Instant fired(BoardBoot now, OptionalLong firstTicks, long micros) {
    OptionalDouble stamped =
        firstTicks.isEmpty() || listenings.row(listening).isEmpty()
            ? OptionalDouble.empty()
            : clock.microsAt(
                now.boot(),
                listenings.row(listening).getAsLong(),
                firstTicks.getAsLong(),
                now.timing().hz());
    return hostClock.at(
        stamped.isPresent() ? Math.min(micros, listening.micros(stamped.getAsDouble())) : micros);
  }
}
