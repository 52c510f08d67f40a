package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.capture.AnotherJvm;
import castwell.capture.LossyDisk;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The power is cut after any number of changes of a disk that then holds only what was synced, and
 * any part of the rest. No part of the suite, since it needs a file system of its own: <code>
 * sh .ci/power-loss</code> runs it, with <code>-Dcastwell.cuts=1000</code> for more.
 */
@Timeout(4 * 3600)
class PowerLossTrial {
  private static final int CUTS = Integer.getInteger("castwell.cuts", 100);
  private static final int SHOTS = 8;
  private static final int SHOTS_OF_THE_BACKUP = 5;

  @TempDir static Path program;
  @TempDir Path folder;
  private final long seed = Seed.of(PowerLossTrial.class);
  private final Random random = new Random(seed);
  private Path before;
  private int disks;

  /** What another program did on a disk until its power went. */
  private record Ended(List<String> said, Path holds, int changes, int lost) {
    Path data() {
      return holds.resolve("data");
    }
  }

  @FunctionalInterface
  private interface Check {
    void accept(Ended ended) throws IOException;
  }

  @BeforeEach
  void makeADisk() throws IOException {
    before = Files.createDirectory(folder.resolve("before"));
    if (Files.notExists(program.resolve("lossy-disk"))) {
      LossyDisk.build(program);
    }
  }

  @Test
  void whatWasAnnouncedIsThere() throws IOException {
    cutEverywhere(
        "shoot",
        ended -> {
          try (Store store = Store.open(ended.data())) {
            assertThat(shots(store)).startsWith(ended.said().toArray(new String[0]));
            assertThat(faults(store)).isEmpty();
          }
        });
  }

  @Test
  void aBackupIsThereWholeOrNotAtAll() throws IOException {
    fill(before.resolve("data"), SHOTS);
    cutEverywhere(
        "back up",
        ended -> {
          Path copy = ended.holds().resolve("copy.db");
          assertThat(Files.exists(copy) || ended.said().isEmpty()).isTrue();
          if (Files.exists(copy)) {
            holds(copy, SHOTS);
          }
          holds(ended.data().resolve("castwell.db"), SHOTS);
        });
  }

  @Test
  void aRestoredFolderHoldsTheOneOrTheOtherAndTheOldIsKept() throws IOException {
    fill(folder.resolve("source"), SHOTS_OF_THE_BACKUP);
    Backups.make(folder.resolve("source"), before.resolve("copy.db"), Rows.NOON, (a, b) -> {});
    fill(before.resolve("data"), SHOTS);
    cutEverywhere(
        "restore",
        ended -> {
          long passages;
          try (Store store = Store.open(ended.data())) {
            assertThat(faults(store)).isEmpty();
            passages = store.<Long>read(t -> t.holding().passages());
          }
          if (ended.said().isEmpty()) {
            assertThat(passages).isIn((long) SHOTS, (long) SHOTS_OF_THE_BACKUP);
          } else {
            assertThat(passages).isEqualTo(SHOTS_OF_THE_BACKUP);
          }
          if (passages != SHOTS) {
            holds(only(ended.data(), "set-aside"), SHOTS);
          }
        });
  }

  @Test
  void aFolderOfAnEarlierFormatHasABackupOfItOnceItWentForward() throws IOException {
    Path data = Files.createDirectory(before.resolve("data"));
    int old = Schema.STEPS.size() - 1;
    Path file = data.resolve("castwell.db");
    Databases.jdbi(file)
        .useHandle(
            handle -> {
              Schema.migrate(handle, file, Schema.STEPS.subList(0, old));
              new Transaction(handle, new Remembered()).rack().addBow("heron", Rows.NOON);
            });
    cutEverywhere(
        "go forward and shoot",
        ended -> {
          Path now = ended.data().resolve("castwell.db");
          if (Databases.jdbi(now).withHandle(Schema::version) > old) {
            assertThat(bows(Schema.backupOf(now, old))).containsExactly("heron");
          }
          try (Store store = Store.open(ended.data())) {
            assertThat(faults(store)).isEmpty();
            assertThat(shots(store)).startsWith(ended.said().toArray(new String[0]));
          }
          assertThat(bows(now)).containsExactly("heron");
        });
  }

  private void cutEverywhere(String work, Check check) throws IOException {
    Ended whole = until(LossyDisk.NO_END, work);
    check.accept(whole);
    int lost = 0;
    for (int i = 0; i < CUTS; i++) {
      int changes = 1 + (int) ((i + random.nextDouble()) * whole.changes() / CUTS);
      Ended ended = until(changes, work);
      try {
        check.accept(ended);
      } catch (AssertionError | RuntimeException e) {
        throw new AssertionError(
            "%s: cut at change %d, seed %d, after %s".formatted(work, changes, seed, ended.said()),
            e);
      }
      lost += ended.lost();
    }
    System.out.printf(
        "%s: %d cuts over %d changes, %d sectors and names lost, seed %d%n",
        work, CUTS, whole.changes(), lost, seed);
  }

  private Ended until(int changes, String work) throws IOException {
    Path after = folder.resolve("after-" + disks++);
    try (LossyDisk disk =
        LossyDisk.mount(program.resolve("lossy-disk"), before, after, random.nextInt(), changes)) {
      List<String> said = new ArrayList<>();
      try (AnotherJvm other =
          AnotherJvm.running(PowerLossTrial.class, work, disk.folder().toString())) {
        for (String line = other.says(); !line.isEmpty(); line = other.says()) {
          said.add(line);
        }
      }
      LossyDisk.Remains remains = disk.remains();
      return new Ended(said, after, remains.changes(), remains.lost());
    }
  }

  /** As a killed program leaves it: with much of it in the log. */
  private void fill(Path data, int shots) throws IOException {
    Path making = folder.resolve("making-" + shots);
    try (Store store = Store.open(making)) {
      IntStream.range(0, shots).forEach(shot -> shoot(store, shot));
      Files.createDirectories(data);
      for (String name : List.of("castwell.db", "castwell.db-wal")) {
        Files.copy(making.resolve(name), data.resolve(name));
      }
    }
  }

  private static String shoot(Store store, int shot) {
    int first = 1 + 4 * shot;
    return store.write(t -> Rows.shoot(t, first, Rows.NOON.plusSeconds(first), true)).shotId();
  }

  private static void holds(Path database, long passages) {
    Databases.jdbi(database)
        .useHandle(
            handle -> {
              assertThat(new Integrity(handle).faults()).isEmpty();
              assertThat(Holding.of(handle).passages()).isEqualTo(passages);
            });
  }

  private static List<String> shots(Store store) {
    return store.read(t -> strings(t.handle(), "SELECT shot_id FROM passage ORDER BY id"));
  }

  private static List<String> faults(Store store) {
    return store.read(t -> t.integrity().faults());
  }

  private static List<String> bows(Path database) {
    return Databases.jdbi(database)
        .withHandle(handle -> strings(handle, "SELECT name FROM bow ORDER BY id"));
  }

  private static List<String> strings(Handle handle, String sql) {
    return handle.createQuery(sql).mapTo(String.class).list();
  }

  private static Path only(Path data, String part) throws IOException {
    try (Stream<Path> files = Files.list(data)) {
      List<Path> found =
          files
              .filter(file -> file.toString().contains(part) && !file.toString().endsWith("-wal"))
              .toList();
      assertThat(found).hasSize(1);
      return found.get(0);
    }
  }

  /** What is done on the disk; it says what it announces. */
  public static void main(String[] arguments) throws IOException {
    Path disk = Path.of(arguments[1]);
    Path data = disk.resolve("data");
    switch (arguments[0]) {
      case "back up" -> {
        Backups.make(data, disk.resolve("copy.db"), Rows.NOON, (part, all) -> {});
        System.out.println("backed up");
      }
      case "restore" -> {
        Restoring.restore(disk.resolve("copy.db"), data, Rows.NOON, (part, all) -> {});
        System.out.println("restored");
      }
      default -> shootAndSay(data);
    }
  }

  private static void shootAndSay(Path data) {
    try (Store store = Store.open(data)) {
      // so few pages that the log begins anew meanwhile
      store.writing(t -> t.handle().execute("PRAGMA wal_autocheckpoint = 30"));
      for (int shot = 0; shot < SHOTS; shot++) {
        System.out.println(shoot(store, shot));
      }
    }
  }
}
