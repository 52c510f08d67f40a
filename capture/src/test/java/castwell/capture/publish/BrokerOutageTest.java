package castwell.capture.publish;

import static castwell.capture.publish.PublishedRange.at;
import static castwell.capture.publish.PublishedRange.ids;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.English;
import castwell.capture.FullDisk;
import castwell.capture.Until;
import castwell.capture.publish.broker.Broker;
import castwell.capture.publish.broker.BrokerConnection;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.BrokerUnavailable;
import castwell.capture.publish.broker.Message;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever the broker does, every shot arrives, in order, with its id; some come twice. How many
 * are shot in the day's outage: <code>-Dcastwell.shots=5000</code>.
 */
@Timeout(600)
@Tag("broker")
class BrokerOutageTest {
  private static final int SHOTS = Integer.getInteger("castwell.shots", 5000);
  private static final int FEW = 300;
  private static final String SHOT = "castwell/+/shot";

  @TempDir Path folder;

  private Mosquitto mosquitto(String... settings) {
    return Mosquitto.start(folder.resolve("broker"), settings);
  }

  private PublishedRange range(BrokerSettings settings) {
    return new PublishedRange(folder.resolve("data"), settings);
  }

  private static void assertAllInOrder(PublishedRange range, Subscriber subscriber) {
    range.awaitAllHeardBy(subscriber);
    assertThat(ids(subscriber)).isEqualTo(range.shot());
  }

  /** Bounded: what waits for the broker is in the store, and none of it in memory. */
  @Test
  void awayForADay() {
    try (Mosquitto mosquitto = mosquitto();
        PublishedRange range = range(at(mosquitto.url()))) {
      range.awaitConnected();
      Subscriber.to(mosquitto, SHOT).close(); // it will be back: the broker keeps for it
      mosquitto.stop();
      range.awaitTrouble("mqtt://");
      long before = usedHeap();
      range.shoot(SHOTS);
      assertThat(range.state().waiting()).isEqualTo(SHOTS);
      range.awaitTrouble("refused");
      assertThat(usedHeap() - before).as("bytes held for %d shots", SHOTS).isLessThan(2 << 20);
      mosquitto.start();
      try (Subscriber subscriber = Subscriber.to(mosquitto, SHOT)) {
        assertAllInOrder(range, subscriber);
      }
    }
  }

  private static long usedHeap() {
    System.gc();
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }

  @Test
  void frozenInTheMiddle() {
    try (Mosquitto mosquitto = mosquitto();
        Subscriber subscriber = Subscriber.to(mosquitto, "castwell/#");
        PublishedRange range = range(at(mosquitto.url()))) {
      range.awaitConnected();
      range.shoot(10);
      awaitHeard(subscriber, 5);
      mosquitto.freeze();
      range.shoot(FEW);
      range.awaitTrouble("no answer in time");
      range.shoot(10);
      mosquitto.thaw();
      assertAllInOrder(range, subscriber);
      Until.holds(
          "online as the last word",
          () -> {
            List<String> words = subscriber.texts("castwell/range/status");
            return words.get(words.size() - 1).contains("\"online\"");
          });
    }
  }

  private static void awaitHeard(Subscriber subscriber, int howMany) {
    Until.holds(howMany + " heard", () -> ids(subscriber).size() >= howMany);
  }

  /**
   * The broker's own memory is not ours to answer for: a subscriber is there whenever we are, to
   * which the broker writes before it acknowledges.
   */
  @Test
  void killedAgainAndAgain() {
    try (Mosquitto mosquitto = mosquitto("allow_anonymous true", "max_inflight_messages 0");
        Subscriber subscriber = Subscriber.to(mosquitto, "#");
        TcpLink link = new TcpLink(mosquitto, 200_000);
        PublishedRange range = range(at(link.url()))) {
      for (int round = 0; round < 2; round++) {
        int known = ids(subscriber).size();
        range.shoot(FEW);
        awaitHeard(subscriber, known + FEW / 3);
        mosquitto.kill();
        link.open(false);
        mosquitto.start();
        awaitListening(mosquitto, subscriber, "back-" + round);
        link.open(true);
      }
      assertAllInOrder(range, subscriber);
    }
  }

  private static void awaitListening(Mosquitto mosquitto, Subscriber subscriber, String word) {
    try (BrokerConnection other =
        BrokerConnection.open(
            Broker.open(mosquitto.url()), "probe", Optional.empty(), message -> {}, () -> {})) {
      other.send(Message.kept("probe", word)).await();
      Until.holds(word, () -> subscriber.texts("probe").contains(word));
    } catch (BrokerUnavailable e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void refusingThePasswordUntilItIsMended() throws Exception {
    Path passwords = folder.resolve("passwords");
    password(passwords, "another");
    try (Mosquitto mosquitto =
            mosquitto(
                "allow_anonymous false", "password_file " + passwords, "allow_anonymous true");
        PublishedRange range =
            range(PublishedRange.settings(mosquitto.url(), Optional.of("the-right-one")))) {
      range.awaitTrouble("refused");
      assertThat(English.say(range.state().sentence())).doesNotContain("the-right-one");
      range.shoot(FEW);
      assertThat(range.state().waiting()).isEqualTo(FEW);
      Subscriber.to(mosquitto, SHOT).close();
      password(passwords, "the-right-one");
      mosquitto.stop();
      mosquitto.start();
      try (Subscriber subscriber = Subscriber.to(mosquitto, SHOT)) {
        assertAllInOrder(range, subscriber);
      }
    }
  }

  private static void password(Path file, String password)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder("mosquitto_passwd", "-b", "-c", file.toString(), "castwell", password)
            .inheritIO()
            .start();
    assertThat(process.waitFor()).isZero();
  }

  @Test
  void forbiddingTheTopicUntilItIsMended() throws IOException {
    Path rights = folder.resolve("rights");
    Files.writeString(rights, "topic read #\ntopic write castwell/range/status\n");
    try (Mosquitto mosquitto = mosquitto("allow_anonymous true", "acl_file " + rights);
        PublishedRange range = range(at(mosquitto.url()))) {
      range.awaitTrouble("castwell/range/tags");
      range.shoot(FEW);
      Files.writeString(rights, "topic readwrite #\n");
      mosquitto.stop();
      mosquitto.start();
      try (Subscriber subscriber = Subscriber.to(mosquitto, SHOT)) {
        assertAllInOrder(range, subscriber);
      }
    }
  }

  /** The broker takes what the store can't note that it did: told again at worst, and no end. */
  @Test
  void aFullDiskMeanwhile() {
    try (Mosquitto mosquitto = mosquitto();
        Subscriber subscriber = Subscriber.to(mosquitto, SHOT);
        PublishedRange range = range(at(mosquitto.url()))) {
      range.awaitConnected();
      mosquitto.freeze();
      range.shoot(10);
      FullDisk.during(
          () -> {
            mosquitto.thaw();
            range.awaitTrouble(folder.resolve("data").toString());
          });
      range.shoot(10);
      assertAllInOrder(range, subscriber);
    }
  }

  /** As many as may be in flight take longer than one answer is waited for. */
  @Test
  void slow() {
    try (Mosquitto mosquitto = mosquitto();
        Subscriber subscriber = Subscriber.to(mosquitto, SHOT);
        TcpLink link = new TcpLink(mosquitto, 6_000);
        PublishedRange range = range(at(link.url()))) {
      range.shoot(40);
      assertAllInOrder(range, subscriber);
    }
  }
}
