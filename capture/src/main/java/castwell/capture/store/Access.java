package castwell.capture.store;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * The keys that ever opened the pages, of which the last one holds, and the browsers that key let
 * in. Only hashes are stored.
 */
public final class Access {
  /**
   * Each admission took the key, so this limit only keeps a program that enters again and again
   * from filling the disk.
   */
  private static final int MOST_ADMISSIONS = 1000;

  private final Handle handle;

  /** A key, stored as its hash. */
  public record StoredKey(long id, String hash, Instant made) {}

  Access(Handle handle) {
    this.handle = handle;
  }

  /** The key that holds now. */
  public Optional<StoredKey> key() {
    return handle
        .createQuery("SELECT id, hash, made_ms FROM access_key ORDER BY id DESC LIMIT 1")
        .map(
            (row, context) ->
                new StoredKey(
                    row.getLong("id"),
                    row.getString("hash"),
                    Instant.ofEpochMilli(row.getLong("made_ms"))))
        .findOne();
  }

  /** Replaces the key, and ends the admissions of the one before. */
  public void changeKey(String hash, Instant made) {
    handle.execute("DELETE FROM admission");
    handle.execute("INSERT INTO access_key (hash, made_ms) VALUES (?, ?)", hash, made);
  }

  /**
   * Lets a browser in by the key that holds. When there are too many admissions, the oldest one
   * ends.
   */
  public void admit(String tokenHash, Instant since) {
    handle.execute(
        """
        INSERT INTO admission (token_hash, access_key_id, since_ms)
        SELECT ?, max(id), ? FROM access_key""",
        tokenHash,
        since);
    handle.execute(
        """
        DELETE FROM admission WHERE token_hash IN
          (SELECT token_hash FROM admission ORDER BY since_ms DESC LIMIT -1 OFFSET ?)""",
        MOST_ADMISSIONS);
  }

  public Optional<Instant> admittedSince(String tokenHash) {
    return handle
        .createQuery("SELECT since_ms FROM admission WHERE token_hash = ?")
        .bind(0, tokenHash)
        .mapTo(Instant.class)
        .findOne();
  }

  public void leave(String tokenHash) {
    handle.execute("DELETE FROM admission WHERE token_hash = ?", tokenHash);
  }

  public int admissions() {
    return handle.createQuery("SELECT count(*) FROM admission").mapTo(int.class).one();
  }
}
