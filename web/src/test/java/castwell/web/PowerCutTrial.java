package castwell.web;

import static castwell.web.HarriedRange.stored;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.capture.LossyDisk;
import castwell.web.settings.BadSettings;
import castwell.web.settings.SettingsFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The power is cut again and again, at any moment, while the board goes on shooting: what was
 * announced to anyone is in the store, which is whole. No part of the suite, since it needs a file
 * system of its own: <code>sh .ci/power-loss</code> runs it, with <code>-Dcastwell.cuts=1000</code>
 * for more.
 */
@Timeout(value = 8, unit = TimeUnit.HOURS)
class PowerCutTrial {
  private static final int CUTS = Integer.getInteger("castwell.cuts", 100);
  private static final int CUTS_A_FOLDER = 20;

  @TempDir Path folder;
  private final long seed = Seed.of(PowerCutTrial.class);
  private final Random random = new Random(seed);
  private final List<LossyDisk.Remains> cuts = new ArrayList<>();
  private Path program;

  @BeforeEach
  void build() throws IOException {
    program = LossyDisk.build(folder);
  }

  @Test
  void whatWasAnnouncedIsThereAndNothingIsLostInTheEnd() throws Exception {
    int announced = 0;
    while (cuts.size() < CUTS) {
      announced += wearOutAFolder(folder.resolve("folder-" + cuts.size()));
    }
    System.out.printf(
        "%d cuts over %d changes, %d sectors and names lost; %d shots announced%n",
        cuts.size(),
        cuts.stream().mapToInt(LossyDisk.Remains::changes).sum(),
        cuts.stream().mapToInt(LossyDisk.Remains::lost).sum(),
        announced);
  }

  private int wearOutAFolder(Path wearing) throws Exception {
    Path disk = wearing.resolve("disk");
    try (HarriedRange range = new HarriedRange(wearing.resolve("broker"), random.nextLong());
        FeedWitness witness = new FeedWitness()) {
      range.configure(disk.resolve("data"));
      for (int i = 0; i < CUTS_A_FOLDER; i++) {
        disk = cutPower(range, witness, disk, wearing.resolve("disk-" + i));
        isWhole(disk.resolve("data"), wearing.resolve("copy-" + i));
        assertThat(stored(wearing.resolve("copy-" + i)))
            .as("cut %d of %s", i, wearing)
            .containsAll(witness.shots())
            .containsAll(range.published());
      }
      range.allIsThereInTheEnd(disk.resolve("data"));
      return witness.shots().size();
    }
  }

  private Path cutPower(HarriedRange range, FeedWitness witness, Path before, Path after)
      throws IOException {
    try (LossyDisk disk =
        LossyDisk.mount(program, before, after, random.nextInt(), LossyDisk.NO_END)) {
      Path data = disk.folder().resolve("data");
      try (Program daemon = range.start(data)) {
        range.letLiveForAWhile(daemon, data, random, witness::listenTo);
        disk.cut();
        daemon.kill();
      }
      cuts.add(disk.remains());
    }
    return after;
  }

  /** Looks at a copy, lest the next daemon finds the log played back already. */
  private static void isWhole(Path data, Path copy) throws IOException, SQLException {
    Files.createDirectory(copy);
    for (String name : List.of("castwell.db", "castwell.db-wal", "castwell.db-journal")) {
      if (Files.exists(data.resolve(name))) {
        Files.copy(data.resolve(name), copy.resolve(name));
      }
    }
    try (Connection database =
            DriverManager.getConnection("jdbc:sqlite:" + copy.resolve("castwell.db"));
        var answer = database.createStatement().executeQuery("PRAGMA integrity_check")) {
      assertThat(answer.getString(1)).isEqualTo("ok");
    }
  }

  @Test
  void theFirstStartsSettingsAreWholeOrTheDefaults() throws IOException {
    Path empty = Files.createDirectory(folder.resolve("empty"));
    for (int i = 0; i < CUTS; i++) {
      Path after = folder.resolve("settings-" + i);
      try (LossyDisk disk =
          LossyDisk.mount(program, empty, after, random.nextInt(), 1 + random.nextInt(8))) {
        readSettings(disk.folder());
        disk.remains();
      }
      assertThat(SettingsFile.read(after.resolve("data")))
          .as("cut %d", i)
          .isEqualTo(SettingsFile.read(folder.resolve("defaults")));
    }
  }

  private static void readSettings(Path disk) {
    try {
      SettingsFile.read(disk.resolve("data"));
    } catch (BadSettings e) {
      // the power went meanwhile
    }
  }
}
