package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.store.Store.Room;
import castwell.capture.view.health.Level;
import castwell.capture.word.Rounded;
import java.util.Optional;

/** Judges how long the room on the disk will last. */
final class DiskItem {
  /**
   * What one stored heartbeat and one stored arrow take on the disk; a test compares both with a
   * real store.
   */
  static final int BEAT_BYTES = 60;

  static final int SHOT_BYTES = 700;

  private static final Subject SUBJECT = Subject.of("disk", "health.title_disk");
  private static final double BEATS_A_DAY = 86_400;
  private static final double GIGABYTE = 1e9;

  /** Within this many days somebody notices and frees some room (common practice, no source). */
  private static final double FEW_DAYS = 30;

  /** Below this much, SQLite's log alone may fill the disk (common practice, no source). */
  private static final long HARDLY_ANY_BYTES = 50_000_000;

  private DiskItem() {}

  /**
   * @param stations how many stations there are; each stores a heartbeat a second while its board
   *     is on
   */
  static Item of(Optional<Room> room, int stations) {
    return room.map(known -> of(known, stations))
        .orElseGet(
            () ->
                Item.cantTell(
                    SUBJECT, Phrase.of("health.disk_untold"), Phrase.of("health.disk_look")));
  }

  private static Item of(Room room, int stations) {
    double days = room.freeBytes() / (BEATS_A_DAY * BEAT_BYTES * Math.max(1, stations));
    boolean noBackup = room.freeBytes() < room.databaseBytes();
    Level level =
        days < 1 || room.freeBytes() < HARDLY_ANY_BYTES
            ? Level.BAD
            : days < FEW_DAYS || noBackup ? Level.ATTENTION : Level.WELL;
    Phrase told =
        Phrase.of(
            noBackup ? "health.disk_no_backup" : "health.disk",
            Rounded.to(1, room.freeBytes() / GIGABYTE),
            Rounded.grouped(Math.floor(days)),
            Rounded.grouped(Math.floor((double) room.freeBytes() / SHOT_BYTES)),
            Rounded.to(3, room.databaseBytes() / GIGABYTE));
    return Item.of(SUBJECT, level, told, Phrase.of("health.disk_free"))
        .with(Measured.plain(room.freeBytes() / GIGABYTE, "GB"));
  }
}
