package castwell.capture.publish;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.English;
import castwell.capture.Until;
import castwell.capture.publish.broker.Broker;
import castwell.capture.publish.broker.BrokerConnection;
import castwell.capture.publish.broker.BrokerUnavailable;
import castwell.capture.publish.broker.Message;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** An outage is many attempts: none of them may leave a thread of the library's behind. */
@Tag("broker")
@Timeout(300)
class LeftThreadsTest {
  private static final String ID = "leaving-no-thread";

  @TempDir Path folder;

  private static BrokerConnection connect(URI url, Duration patience) throws BrokerUnavailable {
    Broker broker = new Broker(url, Optional.empty(), Optional.empty(), Optional.empty(), patience);
    return BrokerConnection.open(broker, ID, Optional.empty(), message -> {}, () -> {});
  }

  private static void inVain(URI url, Duration patience, String why) {
    for (int i = 0; i < 3; i++) {
      assertThat(English.refusal(() -> connect(url, patience))).contains(why);
    }
  }

  @AfterEach
  void noneIsLeft() {
    try {
      Until.holds("no thread left", () -> left().isEmpty());
    } catch (AssertionError e) {
      left()
          .forEach(
              thread -> System.out.println(thread + " " + Arrays.toString(thread.getStackTrace())));
      throw e;
    }
  }

  private static List<Thread> left() {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> thread.getName().endsWith(ID))
        .toList();
  }

  @Test
  void nobodyThere() {
    inVain(URI.create("mqtt://127.0.0.1:1"), Until.PATIENCE, "refused");
  }

  @Test
  void frozen() {
    try (Mosquitto mosquitto = Mosquitto.start(folder)) {
      mosquitto.freeze();
      inVain(mosquitto.url(), Duration.ofSeconds(1), "no answer in time");
    }
  }

  @Test
  void refusing() {
    try (Mosquitto mosquitto = Mosquitto.start(folder, "allow_anonymous false")) {
      inVain(mosquitto.url(), Until.PATIENCE, "was refused");
    }
  }

  /** As a proxy does whose broker is dead. */
  @Test
  void closingAtOnce() throws IOException {
    try (ServerSocket server = new ServerSocket(0)) {
      Thread closing = new Thread(() -> closeAll(server));
      closing.start();
      inVain(
          URI.create("mqtt://127.0.0.1:" + server.getLocalPort()),
          Until.PATIENCE,
          "it ended the connection");
    }
  }

  private static void closeAll(ServerSocket server) {
    try {
      while (true) {
        server.accept().close();
      }
    } catch (IOException e) {
      // the test is over
    }
  }

  @Test
  void brokenOffWithMessagesOnTheirWay() throws BrokerUnavailable {
    try (Mosquitto mosquitto = Mosquitto.start(folder)) {
      for (int i = 0; i < 10; i++) {
        BrokerConnection connection = connect(mosquitto.url(), Broker.PATIENCE);
        connection.send(Message.once("castwell/x", "y"));
        connection.abandon();
      }
    }
  }

  @Test
  void killedWhileConnected() throws BrokerUnavailable {
    try (Mosquitto mosquitto = Mosquitto.start(folder)) {
      BrokerConnection connection = connect(mosquitto.url(), Broker.PATIENCE);
      mosquitto.kill();
      Until.holds("lost", () -> !connection.isOpen());
      connection.abandon();
    }
  }
}
