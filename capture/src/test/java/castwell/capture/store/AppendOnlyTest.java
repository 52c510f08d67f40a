package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.analysis.shot.Gate;
import castwell.capture.measure.Measures;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Readings.Reading;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.Sentence.Loss;
import castwell.capture.wire.Sentence.Missing;
import castwell.capture.wire.Sentence.Surroundings;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Raw facts and what people decided stay as written; only what is derived from them may change. */
class AppendOnlyTest {
  /** Derived, a reader's place, or who is let in. */
  private static final Set<String> NO_FACTS =
      Set.of(
          "passage",
          "figure",
          "cell",
          "cell_total",
          "cells_made",
          "cell_changes",
          "season",
          "season_place",
          "feed",
          "feed_place",
          "access_key",
          "admission",
          "sqlite_sequence");

  @TempDir Path folder;
  private Handle handle;

  @BeforeEach
  void fill() {
    try (Store store = Store.open(folder)) {
      store.writing(AppendOnlyTest::oneRowEach);
    }
    handle = Databases.jdbi(folder.resolve("castwell.db")).open();
  }

  @AfterEach
  void close() {
    handle.close();
  }

  private static void oneRowEach(Transaction t) {
    Passages.Row shot = Rows.shoot(t, 1, Rows.NOON, true);
    long board = shot.boardId();
    OptionalInt none = OptionalInt.empty();
    Surroundings nothing = new Surroundings(none, none, none, none, none, none);
    Identity identity = new Identity(0, 1, "f", "gate-1", 7, 2_000_000, 0, 0, 64, 'P');
    Heartbeat beat = new Heartbeat(1, 7, 1000, 0, 4, 0, 0, Optional.empty(), nothing, 60);
    t.raw().identity(board, shot.listeningId(), identity, 1);
    t.raw().heartbeat(board, shot.listeningId(), beat, 1);
    t.raw().missing(board, new Missing(2, 7, 1, 2));
    t.raw().loss(board, new Loss(3, 7, Gate.A, 1, 2, 3));
    long bow = t.rack().addBow("heron", Rows.NOON);
    t.rack().addState(bow, Rows.NOON, 230, 0.7, Measures.none(), "", Rows.NOON);
    long arrow = t.rack().addArrow("reed", Rows.NOON);
    t.rack().enterArrow(arrow, 0.03, Measures.none(), Rows.NOON);
    t.forceDraws()
        .add(
            bow,
            Rows.NOON,
            List.of(new Point(0.5, 100, OptionalDouble.empty())),
            Rows.NOON,
            "page");
    long read = t.passages().enter("h-1", Rows.STATION, Rows.NOON, shot.sessionId(), 1);
    t.readings()
        .add(read, new Reading(OptionalDouble.of(45), 0.1, 0.2, "", "notes"), Rows.NOON, "page");
    Tags.Pair tags = new Tags.Pair(OptionalLong.of(bow), OptionalLong.of(arrow));
    t.tags().change(Rows.STATION, Rows.NOON, tags, "page");
    t.tags().tagShot(shot.id(), tags, Rows.NOON, "capture", "");
    t.decisions().decide(shot.id(), Decided.SET_ASIDE, "plucked", Rows.NOON, "page");
    t.feed().shot(Rows.STATION, shot.id());
    long plan = t.plans().add(Rows.STATION, "rework", List.of(tags), Rows.NOON, "page");
    OptionalLong shots = OptionalLong.of(shot.id());
    t.plans().happened(plan, new Plans.Event(Plans.Happened.SHOT, 1, shots, Rows.NOON, "page"));
    t.notes().write(shot.sessionId(), "windy", Rows.NOON, "page");
    t.frontsDecisions().decide(shot.sessionId(), true, Rows.NOON, "page");
    t.renewals().note(2, 1, Rows.NOON);
    t.retirements().bow(bow, true, Rows.NOON, "page");
    t.weighings().add(arrow, 0.0301, Rows.NOON, "page");
    long weighing = t.weighings().of(arrow).get(0).id();
    t.weighings().decide(weighing, true, "in the wind", Rows.NOON, "page");
    Backups.Made copy = new Backups.Made(Path.of("copy.db"), 4096, t.holding());
    Backups.enter(t.handle(), copy, Rows.NOON);
  }

  /** Every table there is but those that hold no facts, so that none added later is forgotten. */
  private List<String> tables() {
    return handle
        .createQuery("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
        .mapTo(String.class)
        .filter(name -> !NO_FACTS.contains(name))
        .list();
  }

  private List<String> columns(String table, String which) {
    return handle
        .createQuery("SELECT name FROM pragma_table_info('%s') WHERE %s".formatted(table, which))
        .mapTo(String.class)
        .list();
  }

  private void isRefused(String table, String sql) {
    String rows = "SELECT count(*), total(rowid) FROM (SELECT 1 AS rowid FROM " + table + ")";
    var before = handle.createQuery(rows).mapToMap().one();
    assertThatThrownBy(() -> handle.execute(sql))
        .as(sql)
        .hasMessageContaining(table + " is append-only");
    assertThat(handle.createQuery(rows).mapToMap().one()).isEqualTo(before);
  }

  @Test
  void everyTableHoldsARowToTryItOn() {
    assertThat(tables()).hasSize(29);
    for (String table : tables()) {
      int rows = handle.createQuery("SELECT count(*) FROM " + table).mapTo(int.class).one();
      assertThat(rows).as(table).isPositive();
    }
  }

  @Test
  void updateIsRefused() {
    for (String table : tables()) {
      for (String column : columns(table, "1")) {
        isRefused(table, "UPDATE %1$s SET %2$s = %2$s".formatted(table, column));
        isRefused(table, "UPDATE OR REPLACE %1$s SET %2$s = 1".formatted(table, column));
      }
    }
  }

  @Test
  void deleteIsRefused() {
    for (String table : tables()) {
      isRefused(table, "DELETE FROM " + table);
    }
  }

  @Test
  void insertOrReplaceIsRefused() {
    for (String table : tables()) {
      isRefused(table, "INSERT OR REPLACE INTO %1$s SELECT * FROM %1$s".formatted(table));
      isRefused(table, "REPLACE INTO %1$s SELECT * FROM %1$s".formatted(table));
      isRefused(table, "INSERT OR IGNORE INTO %1$s SELECT * FROM %1$s".formatted(table));
    }
  }

  /** A new id with an old name would otherwise replace the row that bears the name. */
  @Test
  void insertOrReplaceByAnotherUniqueKeyIsRefused() {
    List<String> keyed =
        tables().stream()
            .filter(
                table ->
                    handle
                        .createQuery(
                            "SELECT count(*) > 0 FROM pragma_index_list('%s') WHERE origin = 'u'"
                                .formatted(table))
                        .mapTo(boolean.class)
                        .one())
            .toList();
    assertThat(keyed).contains("bow", "arrow", "session", "board", "listening");
    for (String table : keyed) {
      String others = String.join(", ", columns(table, "pk = 0"));
      isRefused(
          table,
          "INSERT OR REPLACE INTO %1$s (id, %2$s) SELECT id + 1000, %2$s FROM %1$s"
              .formatted(table, others));
      isRefused(
          table,
          "INSERT OR REPLACE INTO %1$s (%2$s) SELECT %2$s FROM %1$s".formatted(table, others));
    }
  }

  @Test
  void upsertIsRefused() {
    for (String table : tables()) {
      String key = String.join(", ", columns(table, "pk > 0"));
      String set =
          columns(table, "pk > 0").stream()
              .map(column -> column + " = excluded." + column)
              .collect(Collectors.joining(", "));
      isRefused(
          table,
          "INSERT INTO %1$s SELECT * FROM %1$s WHERE true ON CONFLICT (%2$s) DO UPDATE SET %3$s"
              .formatted(table, key, set));
    }
  }
}
