package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.store.RawFacts.StoredEdge;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** (board, boot, edge) names an edge for ever: what is known already is not written again. */
class RawFactsTest {
  @TempDir Path folder;
  private Store store;

  @BeforeEach
  void open() {
    store = Store.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void anEdgeWrittenAgainStaysAsFirstWritten() {
    long board = store.write(Rows::board);
    store.writing(t -> t.raw().edges(board, 7, Rows.edges(1)));
    Edge other = new Edge(2, Gate.A, EdgeKind.MERGED, 5, 9);
    store.writing(t -> t.raw().edges(board, 7, List.of(other)));
    List<StoredEdge> stored = store.read(t -> t.raw().edges(board, 7, 1, 100));
    assertThat(stored).isEqualTo(Rows.edges(1).stream().map(StoredEdge::of).toList());
  }

  @Test
  void bootsAndBoardsAreKeptApart() {
    long board = store.write(Rows::board);
    long twin = store.write(t -> t.boards().begin("gate-1")).id();
    store.writing(t -> t.raw().edges(board, 7, Rows.edges(1)));
    assertThat(store.<Integer>read(t -> t.raw().highestEdge(board, 7))).isEqualTo(4);
    assertThat(store.<Integer>read(t -> t.raw().highestEdge(board, 8))).isZero();
    assertThat(store.<Integer>read(t -> t.raw().highestEdge(twin, 7))).isZero();
  }

  @Test
  void ticksAreKeptAsStampedAndUnwrapFromThePassagesFirst() {
    long wrap = 1L << 32;
    List<Edge> edges =
        List.of(
            new Edge(1, Gate.A, EdgeKind.BLOCKED, 3 * wrap - 10_000, 0),
            new Edge(2, Gate.B, EdgeKind.BLOCKED, 3 * wrap + 14_384, 0));
    long board = store.write(Rows::board);
    store.writing(t -> t.raw().edges(board, 7, edges));
    List<StoredEdge> stored = store.read(t -> t.raw().edges(board, 7, 1, 2));
    assertThat(stored).extracting(StoredEdge::ticks).containsExactly(wrap - 10_000, 14_384L);
    assertThat(stored.stream().map(edge -> edge.unwrapped(3 * wrap - 10_000)).toList())
        .isEqualTo(edges);
  }

  @Test
  void aStoredPassageComesBackWholeWithItsLostEdgesNamed() {
    Passages.Row row = store.write(t -> Rows.shoot(t, 1, Rows.NOON, true));
    assertThat(store.read(t -> t.passages().together(row)).edges()).isEqualTo(Rows.edges(1));
    Passages.Row half =
        store.write(
            t -> {
              long board = Rows.board(t);
              t.raw().edges(board, Rows.BOOT, Rows.edges(5).subList(1, 4));
              Sessions.Place place = t.sessions().place(Rows.STATION, Rows.NOON, true, Rows.DATE);
              long calibration = Rows.calibrationInForce(t, Rows.NOON);
              long listening = Rows.listening(t);
              return t.passages()
                  .insert(Rows.row(board, 5, Rows.NOON, place, calibration, listening));
            });
    assertThat(store.read(t -> t.passages().together(half)).lostEdges()).containsExactly(5);
  }

  @Test
  void aShotIdIsGivenOnce() {
    store.writing(t -> Rows.shoot(t, 1, Rows.NOON, true));
    assertThatThrownBy(() -> store.writing(t -> Rows.shoot(t, 1, Rows.NOON, true)))
        .hasMessageContaining("passage.shot_id");
    assertThat(store.<Integer>read(t -> t.shots().ofSession(Rows.DATE).size())).isEqualTo(1);
  }

  @Test
  void aTagForAShotThatIsNotThereIsRefused() {
    Tags.Pair none = Tags.Pair.NOT_KNOWN;
    assertThatThrownBy(() -> store.writing(t -> t.tags().tagShot(99, none, Rows.NOON, "me", "")))
        .hasMessageContaining("FOREIGN KEY");
    Tags.Pair noBow = new Tags.Pair(OptionalLong.of(99), OptionalLong.empty());
    assertThatThrownBy(
            () -> store.writing(t -> t.tags().change(Rows.STATION, Rows.NOON, noBow, "me")))
        .hasMessageContaining("FOREIGN KEY");
  }

  @Test
  void seriesOfOneNameCountUp() {
    store.writing(
        t -> {
          t.boards().begin("gate-1");
          t.boards().begin("gate-1");
          t.boards().begin("gate-2");
        });
    assertThat(Rows.list(store, t -> t.boards().named("gate-1")))
        .extracting(Board::key)
        .containsExactly("gate-1~2", "gate-1");
    assertThat(Rows.list(store, t -> t.boards().named("gate-2")))
        .extracting(Board::key)
        .containsExactly("gate-2");
  }
}
