package castwell.web;

import static java.util.function.Predicate.not;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.publish.Mosquitto;
import castwell.capture.publish.Subscriber;
import castwell.capture.rehearsal.RehearsalSettings;
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
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A range whose daemon isn't let live for long, while its board shoots on, and whoever subscribed
 * to its shots stays.
 */
public final class HarriedRange implements AutoCloseable {

  /**
   * The board keeps 16 shots, and a start takes a few, or on a busy machine many: then it waits for
   * the daemon, since older ones would be gone.
   */
  private static final int MOST_MISSING = 4;

  private static final String TOPIC = "castwell/range/shot";
  private static final Pattern SHOT_ID = Pattern.compile("\"shot_id\":\"([^\"]+)\"");

  private final Mosquitto broker;
  private final Subscriber subscriber;
  private final ShootingBoard board;

  HarriedRange(Path folder, long seed) {
    broker = Mosquitto.start(folder);
    subscriber = Subscriber.to(broker, TOPIC);
    board = new ShootingBoard(new RehearsalSettings(seed, "harried-1", 3, 2, 3, 0.006, 0));
  }

  /** Writes the settings of a data folder. */
  void configure(Path data) throws IOException {
    Files.writeString(
        Files.createDirectories(data).resolve("castwell.toml"),
        """
        [mqtt]
        url = "%s"
        [[station]]
        name = "range"
        port = "%s"
        """
            .formatted(broker.url(), board.port()));
  }

  Program start(Path data) {
    if (missing(data).size() > MOST_MISSING) {
      board.holdUntilAsked();
    }
    return Program.start("run", "--data", data.toString(), "--http", "0");
  }

  /**
   * Lets a daemon live for a while, three seconds at most; often it serves by then.
   *
   * @param serves told at which address it does
   */
  void letLiveForAWhile(Program daemon, Path data, Random random, Consumer<String> serves) {
    List<String> missing = missing(data);
    boolean urgent = missing.size() > MOST_MISSING;
    boolean beforeItServes = !urgent && random.nextInt(3) == 0;
    if (!beforeItServes) {
      serves.accept(daemon.line());
    }
    if (urgent) {
      Until.holds(
          "what the board still keeps: " + missing, () -> stored(data).containsAll(missing));
    }
    daemon.letLive(Duration.ofMillis(random.nextInt(beforeItServes ? 1_500 : 3_000)));
  }

  private List<String> missing(Path data) {
    return board.shots().stream().filter(not(stored(data)::contains)).toList();
  }

  /** At last, all that was shot is stored, and was published in the order of the store. */
  void allIsThereInTheEnd(Path data) {
    List<String> shots = letLive(data);
    List<String> stored = stored(data);
    Set<String> published = published();
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
    assertThat(Castwell.run("verify", "--data", data.toString())).isZero();
  }

  /**
   * @return what was shot before the last of it was seen at the subscriber
   */
  private List<String> letLive(Path data) {
    try (Program last = start(data)) {
      last.line();
      int before = board.shots().size();
      Until.holds("more shots", () -> board.shots().size() > before + 2);
      List<String> shots = board.shots();
      Until.holds("all shots at the subscriber", () -> published().containsAll(shots));
      last.terminate();
      assertThat(last.outcome().exitCode()).isZero();
      return shots;
    }
  }

  /** In the order in which each came first. */
  Set<String> published() {
    Set<String> ids = new LinkedHashSet<>();
    for (String json : subscriber.texts(TOPIC)) {
      Matcher id = SHOT_ID.matcher(json);
      assertThat(id.find()).as(json).isTrue();
      ids.add(id.group(1));
    }
    return ids;
  }

  /**
   * The passages that are in the store, in the order they came; none where there is no store yet.
   */
  public static List<String> stored(Path data) {
    Path file = data.resolve("castwell.db");
    List<String> ids = new ArrayList<>();
    if (!Files.exists(file)) {
      return ids; // ended before there was one
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
      assertThat(e.getMessage()).as("ended before it had tables").contains("no such table");
      return ids;
    }
  }

  @Override
  public void close() {
    board.close();
    subscriber.close();
    broker.close();
  }
}
