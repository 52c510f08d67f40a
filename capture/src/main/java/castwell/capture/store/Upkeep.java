package castwell.capture.store;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** What the store knows of its own upkeep. */
public final class Upkeep {
  private final Handle handle;

  Upkeep(Handle handle) {
    this.handle = handle;
  }

  /** When the last backup was made and read back. */
  public Optional<Instant> lastBackup() {
    return Backups.last(handle);
  }

  /** How many passages were fired from an instant on. */
  public long passagesSince(Instant from) {
    return handle
        .createQuery("SELECT count(*) FROM passage WHERE fired_ms >= ? AND part_of IS NULL")
        .bind(0, from)
        .mapTo(long.class)
        .one();
  }

  /** How many passages each station has. */
  public Map<String, Long> passages() {
    return handle
        .createQuery("SELECT station, count(*) AS passages FROM passage GROUP BY station")
        .map((row, context) -> Map.entry(row.getString("station"), row.getLong("passages")))
        .stream()
        .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
  }
}
