package castwell.capture.store;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** Triggers that keep a table's rows as they were written. */
final class AppendOnly {
  private AppendOnly() {}

  /**
   * Refuses UPDATE and DELETE, and an INSERT of a key that exists: INSERT OR REPLACE would slip
   * past the other two.
   *
   * @param keys every key that the table keeps unique: its columns, with commas between
   */
  static void guard(Handle handle, String table, String... keys) {
    String known =
        Arrays.stream(keys)
            .map(key -> "EXISTS (SELECT 1 FROM %s WHERE %s)".formatted(table, same(key)))
            .collect(Collectors.joining(" OR "));
    refuse(handle, table, "UPDATE", "");
    refuse(handle, table, "DELETE", "");
    refuse(handle, table, "INSERT", "WHEN " + known);
  }

  private static String same(String key) {
    return Arrays.stream(key.split(", "))
        .map(column -> column + " = NEW." + column)
        .collect(Collectors.joining(" AND "));
  }

  private static void refuse(Handle handle, String table, String what, String when) {
    handle.execute(
        """
        CREATE TRIGGER %1$s_no_%2$s BEFORE %3$s ON %1$s %4$s BEGIN
          SELECT RAISE(ABORT, '%1$s is append-only');
        END"""
            .formatted(table, what.toLowerCase(Locale.ROOT), what, when));
  }
}
