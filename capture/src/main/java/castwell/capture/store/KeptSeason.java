package castwell.capture.store;

import castwell.analysis.season.VarianceGrid;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** How days, bows' days and arrows differ, as all sessions together told it last. */
public final class KeptSeason {
  private final Handle handle;

  /** One of the places, and its share of every answer. */
  private record Place(double[] logs, double weight) {}

  KeptSeason(Handle handle) {
    this.handle = handle;
  }

  /** How often any session's cells were made or unmade. */
  public long changes() {
    return BareSql.returning(handle, "SELECT n FROM cell_changes");
  }

  /** What was told by these rules of cells that are still the same. */
  public Optional<VarianceGrid> grid(int rules) {
    return changedAt(rules).filter(at -> at == changes()).flatMap(at -> last(rules));
  }

  private Optional<Long> changedAt(int rules) {
    return BareSql.first(
        handle,
        (row, context) -> row.getLong(1),
        "SELECT cell_changes FROM season WHERE rules = ?",
        rules);
  }

  /** What was last told by these rules, whatever changed since. */
  public Optional<VarianceGrid> last(int rules) {
    return BareSql.first(
            handle,
            (row, context) -> new double[] {row.getDouble(1), row.getDouble(2), row.getDouble(3)},
            "SELECT log_day, log_bow_day, log_arrow FROM season WHERE rules = ?",
            rules)
        .map(mode -> grid(places(), mode));
  }

  private static VarianceGrid grid(List<Place> places, double[] mode) {
    return new VarianceGrid(
        places.stream().map(Place::logs).toArray(double[][]::new),
        places.stream().mapToDouble(Place::weight).toArray(),
        mode);
  }

  private List<Place> places() {
    return BareSql.list(
        handle,
        (row, context) ->
            new Place(
                new double[] {row.getDouble(1), row.getDouble(2), row.getDouble(3)},
                row.getDouble(4)),
        "SELECT log_day, log_bow_day, log_arrow, weight FROM season_place ORDER BY number");
  }

  /** Puts it in the place of what was told before, unless cells changed meanwhile. */
  public void keep(int rules, long changes, VarianceGrid grid) {
    if (changes() != changes) {
      return;
    }
    handle.execute(
        "INSERT OR REPLACE INTO season (id, rules, cell_changes, log_day, log_bow_day, log_arrow) VALUES (1, ?, ?, ?, ?, ?)",
        rules,
        changes,
        grid.mode()[0],
        grid.mode()[1],
        grid.mode()[2]);
    handle.execute("DELETE FROM season_place");
    PreparedBatch batch =
        handle.prepareBatch(
            "INSERT INTO season_place (number, log_day, log_bow_day, log_arrow, weight) VALUES (?, ?, ?, ?, ?)");
    for (int g = 0; g < grid.size(); g++) {
      double[] place = grid.places()[g];
      batch.add(g, place[0], place[1], place[2], grid.weights()[g]);
    }
    batch.execute();
  }
}
