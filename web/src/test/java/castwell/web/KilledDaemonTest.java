package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.device.rehearsal.RehearsalSettings;
import castwell.capture.publish.Mosquitto;
import castwell.capture.publish.Subscriber;
import castwell.web.cli.Castwell;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The daemon killed again and again, at any moment, while the board goes on shooting: every passage
 * is in the store once, and at a subscriber once by its id. With <code>-Dcastwell.kills=200</code>
 * it takes some ten minutes.
 */
@Timeout(value = 40, unit = TimeUnit.MINUTES)
class KilledDaemonTest {
  private static final int KILLS = Integer.getInteger("castwell.kills", 5);
  private static final Duration PATIENCE = Duration.ofSeconds(40);

  /** The board keeps 16 shots: what is older nobody could bring back. */
  private static final int MOST_MISSING = 6;

  private static final String TOPIC = "castwell/range/shot";
  private static final Pattern SHOT_ID = Pattern.compile("\"shot_id\":\"([^\"]+)\"");

  @TempDir Path folder;

  @Test
  void everyPassageIsOnceInTheStoreAndOnceByItsIdAtASubscriber() throws Exception {
    long seed = Long.getLong("castwell.seed", System.nanoTime());
    System.out.println("KilledDaemonTest seed " + seed + ", kills " + KILLS);
    Path data = Files.createDirectories(folder.resolve("data"));
    RehearsalSettings settings = new RehearsalSettings(seed, "killed-1", 3, 0.9, 1.5, 0.006, 0);
    try (Mosquitto broker = Mosquitto.start(folder.resolve("broker"));
        Subscriber subscriber = Subscriber.to(broker, TOPIC);
        ShootingBoard board = new ShootingBoard(settings)) {
      configure(data, broker, board);
      killAgainAndAgain(data, board, new Random(seed));
      List<String> shots = letLive(data, board, subscriber);
      List<String> stored = stored(data);
      Set<String> published = published(subscriber);
      System.out.printf(
          "%d passages, of which %d came %d times to the subscriber%n",
          stored.size(), published.size(), subscriber.texts(TOPIC).size());
      assertThat(stored).doesNotHaveDuplicates().containsAll(shots);
      assertThat(board.shots()).containsAll(stored);
      assertThat(stored).containsAll(published);
      assertThat(published).containsAll(shots);
      assertThat(stored.stream().filter(published::contains))
          .as("published as they were committed")
          .containsExactlyElementsOf(published);
    }
    assertThat(Castwell.run("verify", "--data", data.toString())).isZero();
  }

  private static void configure(Path data, Mosquitto broker, ShootingBoard board)
      throws IOException {
    Files.writeString(
        data.resolve("castwell.toml"),
        """
        [mqtt]
        url = "%s"
        [[station]]
        name = "range"
        port = "%s"
        """
            .formatted(broker.url(), board.port()));
  }

  private static Program start(Path data) {
    return Program.start("run", "--data", data.toString(), "--http", "0");
  }

  private static void killAgainAndAgain(Path data, ShootingBoard board, Random random) {
    for (int i = 0; i < KILLS; i++) {
      try (Program daemon = start(data)) {
        List<String> shots = board.shots();
        boolean urgent = shots.size() - stored(data).size() > MOST_MISSING;
        boolean beforeItServes = !urgent && random.nextInt(3) == 0;
        if (!beforeItServes) {
          daemon.line();
        }
        if (urgent) {
          Until.holds(
              "what the board still keeps", PATIENCE, () -> stored(data).containsAll(shots));
        }
        daemon.letLive(Duration.ofMillis(random.nextInt(beforeItServes ? 1_500 : 3_000)));
        daemon.kill();
      }
    }
  }

  /**
   * @return what was shot before the last of it was seen at the subscriber
   */
  private static List<String> letLive(Path data, ShootingBoard board, Subscriber subscriber) {
    try (Program last = start(data)) {
      last.line();
      int before = board.shots().size();
      Until.holds("more shots", PATIENCE, () -> board.shots().size() > before + 2);
      List<String> shots = board.shots();
      Until.holds(
          "all shots at the subscriber", PATIENCE, () -> published(subscriber).containsAll(shots));
      last.terminate();
      assertThat(last.outcome().exitCode()).isZero();
      return shots;
    }
  }

  /** In the order in which each came first. */
  private static Set<String> published(Subscriber subscriber) {
    Set<String> ids = new LinkedHashSet<>();
    for (String json : subscriber.texts(TOPIC)) {
      Matcher id = SHOT_ID.matcher(json);
      assertThat(id.find()).as(json).isTrue();
      ids.add(id.group(1));
    }
    return ids;
  }

  private static List<String> stored(Path data) {
    Path file = data.resolve("castwell.db");
    List<String> ids = new ArrayList<>();
    if (!Files.exists(file)) {
      return ids; // killed before there was one
    }
    try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file);
        var rows =
            database
                .createStatement()
                .executeQuery("SELECT shot_id FROM passage WHERE part_of IS NULL ORDER BY id")) {
      while (rows.next()) {
        ids.add(rows.getString(1));
      }
      return ids;
    } catch (SQLException e) {
      assertThat(e.getMessage()).as("killed before it had tables").contains("no such table");
      return ids;
    }
  }
}
