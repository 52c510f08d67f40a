package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Compares what a data folder holds with what intact sentences told: no more, and no less. */
final class EdgesHeld {
  private EdgesHeld() {}

  /**
   * @param told all that ever came over the wire to this folder
   */
  static void check(Path folder, List<IntactEdge> told) {
    Tables tables = new Tables(folder);
    Set<IntactEdge> stored = new HashSet<>();
    for (String row : tables.query("SELECT boot, number, gate, kind, ticks, late FROM edge")) {
      String[] cells = row.split(",");
      stored.add(
          new IntactEdge(
              Integer.parseInt(cells[0]),
              Integer.parseInt(cells[1]),
              cells[2],
              cells[3],
              Long.parseLong(cells[4]),
              Long.parseLong(cells[5])));
    }
    assertThat(without(stored, told)).as("edges that nobody told").isEmpty();
    assertThat(without(names(told), names(stored))).as("edges told and not stored").isEmpty();
    assertThat(tables.query(SHOTS_WITHOUT_EDGES)).as("shots made of nothing").isEmpty();
    assertThat(tables.query("PRAGMA foreign_key_check")).isEmpty();
  }

  /** Whatever has a speed has a stamp of each gate. */
  private static final String SHOTS_WITHOUT_EDGES =
      """
      SELECT shot_id FROM passage
      JOIN figure ON passage_id = passage.id AND figure.calibration_id = passage.calibration_id
      WHERE speed_mps IS NOT NULL AND part_of IS NULL AND 2 > (
        SELECT count(DISTINCT gate) FROM edge
        WHERE edge.board_id = passage.board_id AND edge.boot = passage.boot
          AND number BETWEEN first_edge AND last_edge)""";

  private static Set<IntactEdge> without(Collection<IntactEdge> all, Collection<IntactEdge> known) {
    Set<IntactEdge> rest = new HashSet<>(all);
    rest.removeAll(Set.copyOf(known));
    return rest;
  }

  private static Set<IntactEdge> names(Collection<IntactEdge> edges) {
    return edges.stream().map(IntactEdge::named).collect(Collectors.toSet());
  }
}
