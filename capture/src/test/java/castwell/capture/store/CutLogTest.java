package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The power is cut while SQLite writes: the write-ahead log, or the database in a checkpoint, is
 * the new one up to some byte and the old one from there on, or has some of the new sectors only.
 * Each such state opens, is whole, and holds every shot that was announced before. At every byte
 * with <code>-Dcastwell.cuts=all</code>, which takes an hour or two.
 *
 * <p>Source of the log's layout: SQLite's "WAL-mode File Format", 3 and 4.
 */
@Timeout(4 * 3600)
@Tag("slow")
class CutLogTest {
  private static final String CUTS = System.getProperty("castwell.cuts", "12");
  private static final int SHOTS = 9;

  /** So few that the log begins anew several times. */
  private static final int PAGES_BEFORE_A_CHECKPOINT = 30;

  private static final int LOG_HEADER = 32;
  private static final int FRAME_HEADER = 24;
  private static final int PAGE = 4096;
  private static final int SECTOR = 512;

  @TempDir Path folder;
  private final long seed = Seed.of(CutLogTest.class);
  private final Random random = new Random(seed);
  private int cuts;

  /** The two files when a shot had just been announced, and all that was announced by then. */
  private record State(byte[] database, byte[] log, List<String> shots) {}

  private record Opened(String integrity, List<String> shots) {}

  @Test
  void whereverTheLogOrTheDatabaseIsCutWhatWasAnnouncedIsThere() throws IOException {
    List<State> states = shoot();
    int logsBegun = 0;
    int checkpoints = 0;
    for (int i = 1; i < states.size(); i++) {
      State before = states.get(i - 1);
      State after = states.get(i);
      logsBegun += beganAnew(before.log(), after.log()) ? 1 : 0;
      checkpoints += Arrays.equals(before.database(), after.database()) ? 0 : 1;
      whileTheLogIsWritten(before, after);
      whileTheDatabaseIsWritten(before, after);
    }
    System.out.printf(
        "%d cuts, over %d checkpoints and %d logs begun anew%n", cuts, checkpoints, logsBegun);
    assertThat(checkpoints).isPositive();
    assertThat(logsBegun).isPositive();
  }

  private List<State> shoot() throws IOException {
    Path data = folder.resolve("data");
    List<State> states = new ArrayList<>();
    try (Store store = Store.open(data)) {
      store.writing(
          t -> t.handle().execute("PRAGMA wal_autocheckpoint = " + PAGES_BEFORE_A_CHECKPOINT));
      for (int shot = 0; shot < SHOTS; shot++) {
        int first = 1 + 4 * shot;
        store.writing(t -> Rows.shoot(t, first, Rows.NOON.plusSeconds(first), true));
        states.add(
            new State(
                Files.readAllBytes(data.resolve("castwell.db")),
                Files.readAllBytes(data.resolve("castwell.db-wal")),
                store.read(t -> shots(t.handle()))));
      }
    }
    return states;
  }

  private static List<String> shots(Handle handle) {
    return handle.createQuery("SELECT shot_id FROM passage ORDER BY id").mapTo(String.class).list();
  }

  /** Its salt is another then. */
  private static boolean beganAnew(byte[] before, byte[] after) {
    return !Arrays.equals(before, 16, 24, after, 16, 24);
  }

  /** The database is the old one until the log is synced. */
  private void whileTheLogIsWritten(State before, State after) throws IOException {
    for (int at : cutsBetween(before.log(), after.log(), FRAME_HEADER + PAGE, LOG_HEADER)) {
      byte[] log = cut(before.log(), after.log(), at);
      check(before.database(), log, before.shots(), after.shots(), "log cut at " + at);
    }
    for (int i = 0; i < sample(); i++) {
      byte[] log = torn(before.log(), after.log());
      check(before.database(), log, before.shots(), after.shots(), "log torn");
    }
  }

  /** The log is whole, and stays until the database is synced. */
  private void whileTheDatabaseIsWritten(State before, State after) throws IOException {
    for (int at : cutsBetween(before.database(), after.database(), PAGE, 0)) {
      byte[] database = cut(before.database(), after.database(), at);
      check(database, after.log(), after.shots(), after.shots(), "database cut at " + at);
    }
    if (!Arrays.equals(before.database(), after.database())) {
      for (int i = 0; i < sample(); i++) {
        byte[] database = torn(before.database(), after.database());
        check(database, after.log(), after.shots(), after.shots(), "database torn");
      }
    }
  }

  private static int sample() {
    return CUTS.equals("all") ? 100 : Integer.parseInt(CUTS);
  }

  /** Around the beginning of each unit, and some or all in between. */
  private TreeSet<Integer> cutsBetween(byte[] before, byte[] after, int unit, int header) {
    int first = Math.max(0, Arrays.mismatch(before, after));
    int last = lastChange(before, after);
    TreeSet<Integer> cuts = new TreeSet<>();
    for (int at = first; at <= last; at++) {
      int within = Math.floorMod(at - header, unit);
      boolean edge = within <= 1 || within == unit - 1 || within == FRAME_HEADER;
      if (edge || CUTS.equals("all")) {
        cuts.add(at);
      }
    }
    for (int i = 0; i < sample() && last >= first; i++) {
      cuts.add(first + random.nextInt(last - first + 1));
    }
    return cuts;
  }

  private static int lastChange(byte[] before, byte[] after) {
    int last = after.length - 1;
    while (last >= 0 && last < before.length && before[last] == after[last]) {
      last--;
    }
    return last;
  }

  /** The new one up to a byte, from there on the old one. */
  private static byte[] cut(byte[] before, byte[] after, int at) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(after, 0, at);
    bytes.write(before, Math.min(at, before.length), Math.max(0, before.length - at));
    return bytes.toByteArray();
  }

  /** Some sectors new, the others old, or garbage where there was none. */
  private byte[] torn(byte[] before, byte[] after) {
    byte[] bytes = new byte[after.length];
    random.nextBytes(bytes);
    System.arraycopy(before, 0, bytes, 0, Math.min(before.length, after.length));
    for (int at = 0; at < after.length; at += SECTOR) {
      if (random.nextBoolean()) {
        System.arraycopy(after, at, bytes, at, Math.min(SECTOR, after.length - at));
      }
    }
    return bytes;
  }

  private void check(
      byte[] database, byte[] log, List<String> announced, List<String> written, String how)
      throws IOException {
    cuts++;
    Path data = Files.createDirectories(folder.resolve("cut"));
    Files.write(data.resolve("castwell.db"), database);
    Files.write(data.resolve("castwell.db-wal"), log);
    Opened opened;
    try (Store store = Store.open(data)) {
      opened =
          store.read(
              t ->
                  new Opened(
                      t.handle().createQuery("PRAGMA integrity_check").mapTo(String.class).one(),
                      shots(t.handle())));
    }
    assertThat(opened.integrity()).as("%s, seed %d", how, seed).isEqualTo("ok");
    assertThat(opened.shots())
        .as("%s, seed %d", how, seed)
        .startsWith(announced.toArray(new String[0]));
    assertThat(written)
        .as("%s, seed %d", how, seed)
        .startsWith(opened.shots().toArray(new String[0]));
  }
}
