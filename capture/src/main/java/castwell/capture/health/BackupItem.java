package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.store.Upkeep;
import castwell.capture.view.health.Level;
import castwell.capture.word.Lasting;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** Judges whether there is a recent copy of what was shot. */
final class BackupItem {
  private static final Subject SUBJECT = Subject.of("backup", "health.title_backup");
  private static final Phrase REMEDY = Phrase.of("health.backup_remedy");

  /** From this age on a backup is called old (common practice, no source). */
  private static final Duration OLD = Duration.ofDays(30);

  private BackupItem() {}

  static Item of(Upkeep upkeep, Instant now) {
    Optional<Instant> last = upkeep.lastBackup();
    long since = upkeep.passagesSince(last.orElse(Instant.EPOCH));
    Item item = last.map(at -> of(Duration.between(at, now), since)).orElseGet(() -> none(since));
    return item.with(Measured.plain(since, "passages since"));
  }

  private static Item none(long passages) {
    return passages == 0
        ? Item.well(SUBJECT, Phrase.of("health.backup_nothing"))
        : Item.attention(SUBJECT, Phrase.of("health.backup_none", passages), REMEDY);
  }

  private static Item of(Duration age, long since) {
    boolean isDue = age.compareTo(OLD) > 0 && since > 0;
    return Item.of(
        SUBJECT,
        isDue ? Level.ATTENTION : Level.WELL,
        Phrase.of("health.backup_last", Lasting.words(age), since),
        REMEDY);
  }
}
