package castwell.capture.station;

import castwell.capture.store.Board;
import castwell.capture.store.RawFacts.StoredEdge;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.capture.wire.Sentence.EdgeSeen;
import castwell.capture.wire.Sentence.Heartbeat;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Finds which series of edges a board belongs to when its name is taken, since boot counters get
 * reset and two boards can bear one name. No edge may vanish as a repeat of another board's.
 */
final class BoardSeries {
  private final Store store;
  private final BoardsHeard heard;
  private final String station;

  BoardSeries(Store store, BoardsHeard heard, String station) {
    this.store = store;
    this.heard = heard;
    this.station = station;
  }

  /** The series of that name that this station heard last, or else the latest one, or a new one. */
  Board findOrBegin(String device, long micros) {
    return store
        .read(t -> free(t, device, micros).stream().findFirst())
        .orElseGet(() -> store.write(t -> t.boards().begin(device)));
  }

  /** Whether another station hears the board now. */
  boolean isElsewhere(Board board, long micros) {
    return heard.isElsewhere(station, board.id(), micros);
  }

  /** A series that holds nothing of this boot, or a new one. */
  Board findOrBeginUnused(Board taken, int boot, Set<Board> used, long micros) {
    return store
        .read(t -> unused(t, free(t, taken.device(), micros), boot, used))
        .orElseGet(() -> store.write(t -> t.boards().begin(taken.device())));
  }

  private List<Board> free(Transaction t, String device, long micros) {
    return t.boards().named(device, station).stream()
        .filter(board -> !isElsewhere(board, micros))
        .toList();
  }

  /**
   * The series that holds this very edge, or one that holds nothing of its boot, or a new one.
   *
   * @param used the series that have edges of that boot, some of which may not be stored yet
   */
  Board findOrBegin(Board taken, EdgeSeen edge, Set<Board> used, long micros) {
    return store.write(
        t -> {
          List<Board> all = free(t, taken.device(), micros);
          Optional<Board> same = all.stream().filter(board -> holds(t, board, edge)).findFirst();
          return same.or(() -> unused(t, all, edge.boot(), used))
              .orElseGet(() -> t.boards().begin(taken.device()));
        });
  }

  /**
   * The series that holds this very beat; or else the one the board was taken for, unless more
   * edges of its boot are stored than the beat counts; or else one that holds nothing of its boot;
   * or a new one.
   *
   * @param used the series that have edges of that boot, some of which may not be stored yet
   */
  Board findOrBegin(Board taken, Heartbeat beat, Set<Board> used, long micros) {
    return store.write(
        t -> {
          List<Board> all = free(t, taken.device(), micros);
          Optional<Board> same = all.stream().filter(b -> t.raw().holds(b.id(), beat)).findFirst();
          boolean canBe = t.raw().highestEdge(taken.id(), beat.boot()) <= beat.edges();
          return same.or(() -> canBe ? Optional.of(taken) : unused(t, all, beat.boot(), used))
              .orElseGet(() -> t.boards().begin(taken.device()));
        });
  }

  private static Optional<Board> unused(Transaction t, List<Board> all, int boot, Set<Board> used) {
    return all.stream()
        .filter(b -> !used.contains(b) && t.raw().highestEdge(b.id(), boot) == 0)
        .findFirst();
  }

  static boolean isSame(StoredEdge stored, EdgeSeen edge) {
    return stored.gate() == edge.gate()
        && stored.kind() == edge.kind()
        && stored.ticks() == edge.ticks();
  }

  private static boolean holds(Transaction t, Board board, EdgeSeen edge) {
    return t.raw()
        .edge(board.id(), edge.boot(), edge.number())
        .map(stored -> isSame(stored, edge))
        .orElse(false);
  }
}
