package castwell.capture.store;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Checks that a database is whole: by SQLite's own check, and by comparing its schema with a new
 * one.
 */
public final class Integrity {
  private final Handle handle;

  Integrity(Handle handle) {
    this.handle = handle;
  }

  /** The faults that were found, one sentence each; empty when there are none. */
  public List<String> faults() {
    List<String> faults = new ArrayList<>();
    handle
        .createQuery("PRAGMA integrity_check")
        .mapTo(String.class)
        .filter(line -> !line.equals("ok"))
        .forEach(line -> faults.add("SQLite says: " + line + "."));
    handle
        .createQuery("PRAGMA foreign_key_check")
        .map(
            (row, context) ->
                "A row of %s (%d) points to one of %s that isn't there."
                    .formatted(row.getString(1), row.getLong(2), row.getString(3)))
        .forEach(faults::add);
    faults.addAll(otherTables());
    return faults;
  }

  /**
   * Finds differences in tables, indexes and the triggers that keep raw facts as they were written.
   */
  private List<String> otherTables() {
    List<String> faults = new ArrayList<>();
    Map<String, String> wanted = asMade();
    Map<String, String> found = schema(handle);
    wanted.forEach(
        (name, sql) -> {
          if (!found.containsKey(name)) {
            faults.add("There is no %s.".formatted(name));
          } else if (!found.get(name).equals(sql)) {
            faults.add("%s isn't as this program makes it.".formatted(name));
          }
        });
    return faults;
  }

  private Map<String, String> asMade() {
    var steps = Schema.STEPS.subList(0, Schema.version(handle));
    return Jdbi.create("jdbc:sqlite::memory:")
        .withHandle(
            fresh -> {
              steps.forEach(step -> step.accept(fresh));
              return schema(fresh);
            });
  }

  private static Map<String, String> schema(Handle handle) {
    Map<String, String> schema = new LinkedHashMap<>();
    handle
        .createQuery(
            "SELECT type || ' ' || name AS name, sql FROM sqlite_schema WHERE sql IS NOT NULL")
        .map((row, context) -> Map.entry(row.getString("name"), row.getString("sql")))
        .forEach(entry -> schema.put(entry.getKey(), entry.getValue()));
    return schema;
  }
}
