package castwell.capture.station;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passage;
import castwell.capture.assembly.Assembler;
import castwell.capture.assembly.AssemblyTiming;
import castwell.capture.assembly.Gates;
import castwell.capture.store.Board;
import castwell.capture.store.Passages;
import castwell.capture.store.RawFacts.StoredEdge;
import castwell.capture.store.RawFacts.Timing;
import castwell.capture.store.Store;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One boot of one board at a station, with the assembler that makes passages of its edges.
 *
 * @param storedHighest the highest edge number of this boot that the store held when the station
 *     began to hear it
 */
record BoardBoot(Board board, int boot, Timing timing, Assembler assembler, int storedHighest) {
  private static final int REMEMBERED_PASSAGES = 32;

  /**
   * How many edges before the last stored one may be asked for again: no further back than the
   * remembered passages surely reach.
   */
  private static final int MOST_ASKED_AGAIN = 64;

  static BoardBoot open(
      Store store, AssemblyTiming waits, Gates gates, Board board, int boot, Timing timing) {
    Assembler assembler = new Assembler(waits, gates);
    return store.read(
        t -> {
          List<Edge> edges = new ArrayList<>();
          List<Passage> passages = new ArrayList<>();
          for (Passages.Row row : t.passages().last(board.id(), boot, REMEMBERED_PASSAGES)) {
            Passage passage = t.passages().together(row);
            passages.add(passage);
            edges.addAll(passage.edges());
          }
          assembler.restore(edges, passages);
          int highest = t.raw().highestEdge(board.id(), boot);
          return new BoardBoot(board, boot, timing, assembler, highest);
        });
  }

  /** The edge that already bears this number, in memory or in the store. */
  Optional<StoredEdge> known(Store store, int number) {
    Optional<StoredEdge> remembered = assembler.known(number).map(StoredEdge::of);
    return remembered.isPresent() || number > storedHighest
        ? remembered
        : store.read(t -> t.raw().edge(board.id(), boot, number));
  }

  /**
   * The edge from which on the board should send again, so that nothing it still keeps is missed.
   */
  int firstNotStored(Store store, int keep) {
    return store.read(
        t -> {
          int highest = t.raw().highestEdge(board.id(), boot);
          int number = Math.max(1, highest - Math.min(keep, MOST_ASKED_AGAIN));
          for (StoredEdge edge : t.raw().edges(board.id(), boot, number, highest)) {
            if (edge.number() != number) {
              return number;
            }
            number++;
          }
          return number;
        });
  }
}
