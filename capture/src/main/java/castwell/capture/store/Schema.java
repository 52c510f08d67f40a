package castwell.capture.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;

/**
 * The tables, and the steps that brought them here. Each database file says how many steps it took.
 */
final class Schema {
  /** Never change a step that was released: add one. */
  static final List<Consumer<Handle>> STEPS =
      List.of(
          handle -> {
            handle.createScript(resource("schema-1.sql")).execute();
            AppendOnly.guard(handle, "edge", "board_id, boot, number");
            AppendOnly.guard(handle, "identity", "board_id, boot, listening_id");
            AppendOnly.guard(handle, "missing", "board_id, boot, first, last");
            AppendOnly.guard(handle, "loss", "board_id, boot, gate, first_ticks, last_ticks");
            AppendOnly.guard(handle, "heartbeat", "board_id, boot, ticks48");
            AppendOnly.guard(handle, "board", "id", "device, series");
            AppendOnly.guard(handle, "listening", "id", "station, source, started_ms");
            for (String table : List.of("bow", "arrow", "session")) {
              AppendOnly.guard(handle, table, "id", "name");
            }
            for (String table :
                List.of(
                    "calibration",
                    "bow_state",
                    "arrow_entry",
                    "tag_change",
                    "shot_tag",
                    "decision")) {
              AppendOnly.guard(handle, table, "id");
            }
          },
          handle -> {
            handle.createScript(resource("schema-2.sql")).execute();
            AppendOnly.guard(handle, "reading", "passage_id");
            AppendOnly.guard(handle, "force_draw", "id");
            AppendOnly.guard(handle, "force_draw_point", "force_draw_id, draw_length_m");
          },
          handle -> {
            handle.createScript(resource("schema-3.sql")).execute();
            AppendOnly.guard(handle, "plan", "id");
            AppendOnly.guard(handle, "plan_turn", "plan_id, number");
            AppendOnly.guard(handle, "plan_event", "id");
            AppendOnly.guard(handle, "backup", "id");
          },
          handle -> {
            handle.createScript(resource("schema-4.sql")).execute();
            for (String table : List.of("session_note", "retiring", "weighing")) {
              AppendOnly.guard(handle, table, "id");
            }
            CellsUnmade.watch(handle);
          },
          handle -> {
            handle.createScript(resource("schema-5.sql")).execute();
            AppendOnly.guard(handle, "weighing_decision", "id");
          },
          handle -> handle.createScript(resource("schema-6.sql")).execute(),
          handle -> handle.createScript(resource("schema-7.sql")).execute(),
          handle -> {
            handle.createScript(resource("schema-8.sql")).execute();
            AppendOnly.guard(handle, "fronts_decision", "id");
            AppendOnly.guard(handle, "renewal", "id");
          },
          handle -> {
            handle.createScript(resource("schema-9.sql")).execute();
            CellsUnmade.watchArrows(handle);
          },
          handle -> {
            handle.createScript(resource("schema-10.sql")).execute();
            CellsUnmade.count(handle);
          });

  private Schema() {}

  static int version(Handle handle) {
    return handle.createQuery("PRAGMA user_version").mapTo(int.class).one();
  }

  /**
   * Brings a database forward to the last of the given steps, after a backup beside it if it holds
   * anything yet.
   *
   * @throws StoreRefused when it took more steps than this program knows
   */
  static void migrate(Handle handle, Path file, List<Consumer<Handle>> steps) {
    int version = version(handle);
    refuseNewer(version, file, steps);
    if (version > 0 && version < steps.size()) {
      backUp(handle, backupOf(file, version));
    }
    for (int step = version; step < steps.size(); step++) {
      int reached = step + 1;
      Consumer<Handle> change = steps.get(step);
      handle.useTransaction(
          transaction -> {
            change.accept(transaction);
            transaction.execute("PRAGMA user_version = " + reached);
          });
    }
  }

  /** Copies the database, replacing a backup that an earlier, failed step left. */
  private static void backUp(Handle handle, Path backup) {
    try {
      Path part = WholeFile.partOf(backup);
      handle.execute("VACUUM INTO ?", part.toString());
      WholeFile.name(part, backup);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static void refuseNewer(int version, Path file, List<Consumer<Handle>> steps) {
    if (version > steps.size()) {
      throw new StoreRefused(
          "%s was written by a newer Castwell (format %d, this program knows %d): use that one, or another data folder."
              .formatted(file, version, steps.size()));
    }
  }

  static Path backupOf(Path file, int version) {
    return file.resolveSibling(file.getFileName() + ".before-format-" + (version + 1));
  }

  private static String resource(String name) {
    try (InputStream in = Schema.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
