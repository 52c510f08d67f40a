package castwell.web.access;

import castwell.capture.store.Access.StoredKey;
import castwell.capture.store.Store;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.Optional;

/** Knows who has the key, and which browsers it let in. */
public final class Doorkeeper {
  /** How long a browser stays admitted. */
  public static final Duration ADMITTED_FOR = Duration.ofDays(180);

  private static final int TOKEN_BYTES = 32;

  private final Store store;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();

  public Doorkeeper(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /** Makes a key where there is none yet. It can't be shown again later. */
  public Optional<String> firstKey() {
    boolean thereIsOne = store.read(t -> t.access().key()).isPresent();
    return thereIsOne ? Optional.empty() : Optional.of(newKey());
  }

  /**
   * Makes a key in the place of the one before, which no longer opens; whoever it let in is out.
   */
  public String newKey() {
    String key = AccessKey.fresh(random);
    String hash = Secrets.hash(AccessKey.meant(key));
    Instant now = clock.instant();
    store.writing(t -> t.access().changeKey(hash, now));
    return key;
  }

  public boolean opens(String key) {
    String hash = Secrets.hash(AccessKey.meant(key));
    return store.read(t -> t.access().key()).map(StoredKey::hash).stream()
        .anyMatch(kept -> Secrets.same(kept, hash));
  }

  /**
   * Admits a browser that showed the key.
   *
   * @return what it shows from now on
   */
  public String admit() {
    byte[] bytes = new byte[TOKEN_BYTES];
    random.nextBytes(bytes);
    String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    Instant now = clock.instant();
    store.writing(t -> t.access().admit(Secrets.hash(token), now));
    return token;
  }

  public boolean isAdmitted(String token) {
    Instant longestAgo = clock.instant().minus(ADMITTED_FOR);
    return store
        .read(t -> t.access().admittedSince(Secrets.hash(token)))
        .filter(since -> since.isAfter(longestAgo))
        .isPresent();
  }

  public void leave(String token) {
    store.writing(t -> t.access().leave(Secrets.hash(token)));
  }
}
