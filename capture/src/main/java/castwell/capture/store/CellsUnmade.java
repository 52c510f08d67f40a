package castwell.capture.store;

import java.util.List;
import org.jdbi.v3.core.Handle;

/** Triggers that mark a session's cells as unmade as soon as anything changes that they sum up. */
final class CellsUnmade {
  private CellsUnmade() {}

  static void watch(Handle handle) {
    on(handle, "passage", "INSERT", "NEW.session_id");
    on(handle, "passage", "UPDATE", "NEW.session_id");
    String ofPassage = "(SELECT session_id FROM passage WHERE id = NEW.passage_id)";
    for (String table : List.of("figure", "shot_tag", "decision", "reading")) {
      on(handle, table, "INSERT", ofPassage);
    }
    on(handle, "figure", "UPDATE", ofPassage);
    on(
        handle,
        "bow_state",
        "INSERT",
        "(SELECT DISTINCT session_id FROM cell WHERE bow_id = NEW.bow_id)");
  }

  /** An arrow's mass and diameter tell what the air took from its speed. */
  static void watchArrows(Handle handle) {
    on(
        handle,
        "arrow_entry",
        "INSERT",
        "(SELECT DISTINCT session_id FROM cell WHERE arrow_id = NEW.arrow_id)");
  }

  /** Whatever rests on all sessions' cells sees by the count whether it still holds. */
  static void count(Handle handle) {
    for (String what : List.of("INSERT", "DELETE")) {
      handle.execute(
          "CREATE TRIGGER cells_%1$s_counts AFTER %1$s ON cells_made BEGIN UPDATE cell_changes SET n = n + 1; END"
              .formatted(what));
    }
  }

  private static void on(Handle handle, String table, String what, String sessions) {
    handle.execute(
        """
        CREATE TRIGGER %1$s_%2$s_unmakes_cells AFTER %2$s ON %1$s BEGIN
          DELETE FROM cells_made WHERE session_id %4$s %3$s;
        END"""
            .formatted(table, what, sessions, sessions.contains("DISTINCT") ? "IN" : "="));
  }
}
