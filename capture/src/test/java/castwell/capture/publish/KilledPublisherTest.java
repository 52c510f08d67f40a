package castwell.capture.publish;

import static castwell.capture.publish.PublishedRange.ids;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.AnotherJvm;
import castwell.capture.Until;
import castwell.capture.publish.broker.BrokerSettings;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Killed in the middle of publishing, it leaves its will, and the next start goes on. More kills:
 * <code>-Dcastwell.kills=200</code>.
 */
@Timeout(1800)
@Tag("broker")
class KilledPublisherTest {
  private static final int SHOTS = 400;
  private static final int KILLS = Integer.getInteger("castwell.kills", 2);

  @TempDir Path folder;

  @Test
  void everyShotComesInOrderAndTheStationIsOfflineInBetween() throws IOException {
    try (Mosquitto mosquitto = Mosquitto.start(folder.resolve("broker"));
        Subscriber subscriber = Subscriber.to(mosquitto, "castwell/#");
        // so slow that the kills come in the middle
        TcpLink link = new TcpLink(mosquitto, SHOTS * 400)) {
      String url = link.url().toString();
      for (int kill = 1; kill <= KILLS; kill++) {
        int enough = kill * SHOTS / (KILLS + 2);
        AnotherJvm publisher = AnotherJvm.running(KilledPublisherTest.class, data(), url);
        Until.holds(enough + " shots", () -> ids(subscriber).size() >= enough);
        publisher.kill();
        assertThat(ids(subscriber)).hasSizeLessThan(SHOTS);
        Until.holds("the will", () -> lastStatus(subscriber).contains("\"offline\""));
      }
      try (AnotherJvm last = AnotherJvm.running(KilledPublisherTest.class, data(), url)) {
        assertThat(last.says()).isEqualTo("open");
        Until.holds("all shots", () -> ids(subscriber).size() == SHOTS);
        assertThat(lastStatus(subscriber)).contains("\"online\"");
      }
      assertThat(ids(subscriber)).isEqualTo(shot());
      Until.holds("leave taken", () -> lastStatus(subscriber).contains("\"offline\""));
    }
  }

  private String data() {
    return folder.resolve("data").toString();
  }

  private static String lastStatus(Subscriber subscriber) {
    List<String> words = subscriber.texts("castwell/range/status");
    return words.isEmpty() ? "" : words.get(words.size() - 1);
  }

  private static List<String> shot() {
    return IntStream.range(0, SHOTS).mapToObj(i -> "gate-1.7." + (1 + 4 * i)).toList();
  }

  /** The publisher; at the first start all shots are stored. */
  public static void main(String[] arguments) throws IOException {
    BrokerSettings broker = PublishedRange.at(URI.create(arguments[1]));
    try (PublishedRange range = new PublishedRange(Path.of(arguments[0]), broker)) {
      if (range.store().read(t -> t.sessions().all()).isEmpty()) {
        range.shoot(SHOTS);
      }
      System.out.println("open");
      while (System.in.read() >= 0) {
        // until the other side ends
      }
    }
  }
}
