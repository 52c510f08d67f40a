package castwell.capture.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.Until;
import castwell.capture.publish.broker.Broker;
import castwell.capture.publish.broker.BrokerConnection;
import castwell.capture.publish.broker.BrokerUnavailable;
import castwell.capture.publish.broker.Message;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Tag("broker")
@Timeout(300)
class BrokerConnectionTest {
  @TempDir Path folder;

  private static BrokerConnection connect(
      Mosquitto mosquitto, String id, BlockingQueue<Message> heard, Runnable lost)
      throws BrokerUnavailable {
    Message will = Message.kept("castwell/x/status", "offline");
    return BrokerConnection.open(
        Broker.open(mosquitto.url()), id, Optional.of(will), heard::add, lost);
  }

  private static Message next(BlockingQueue<Message> heard) throws InterruptedException {
    Message message = heard.poll(Until.PATIENCE.toSeconds(), TimeUnit.SECONDS);
    assertThat(message).as("a message within 20 s").isNotNull();
    return message;
  }

  /** MQTT 5.0 (OASIS), 3.8.3.1: no local. */
  @Test
  void bothWaysOnOneTopicAndNobodyHearsItself() throws Exception {
    try (Mosquitto mosquitto = Mosquitto.start(folder.resolve("broker"))) {
      BlockingQueue<Message> first = new LinkedBlockingQueue<>();
      BlockingQueue<Message> second = new LinkedBlockingQueue<>();
      try (BrokerConnection a = connect(mosquitto, "a", first, () -> {});
          BrokerConnection b = connect(mosquitto, "b", second, () -> {})) {
        a.subscribe("castwell/x/wire", true);
        b.subscribe("castwell/x/wire", true);
        a.send(Message.once("castwell/x/wire", "from a")).await();
        assertThat(next(second).text()).isEqualTo("from a");
        b.send(Message.once("castwell/x/wire", "from b")).await();
        assertThat(next(first).text()).isEqualTo("from b");
        assertThat(first).isEmpty();
        assertThat(second).isEmpty();
      }
    }
  }

  /** MQTT 5.0 (OASIS), 3.1.2.5: the will is said when the connection ends without DISCONNECT. */
  @Test
  void whoVanishesLeavesItsWillAndWhoTakesLeaveDoesNot() throws Exception {
    try (Mosquitto mosquitto = Mosquitto.start(folder.resolve("broker"))) {
      BlockingQueue<Message> heard = new LinkedBlockingQueue<>();
      try (BrokerConnection watcher = connect(mosquitto, "watcher", heard, () -> {})) {
        watcher.subscribe("castwell/#", false);
        connect(mosquitto, "polite", new LinkedBlockingQueue<>(), () -> {}).close();
        connect(mosquitto, "gone", new LinkedBlockingQueue<>(), () -> {}).abandon();
        assertThat(next(heard).text()).isEqualTo("offline");
        watcher.send(Message.once("castwell/end", "end")).await();
        assertThat(next(heard).text()).isEqualTo("end");
      }
    }
  }

  @Test
  void aKilledBrokerIsNoticedAndCantBeSpokenToAnyMore() throws Exception {
    try (Mosquitto mosquitto = Mosquitto.start(folder.resolve("broker"))) {
      CountDownLatch lost = new CountDownLatch(1);
      BrokerConnection connection =
          connect(mosquitto, "a", new LinkedBlockingQueue<>(), lost::countDown);
      mosquitto.kill();
      assertThat(lost.await(Until.PATIENCE.toSeconds(), TimeUnit.SECONDS)).isTrue();
      assertThat(connection.isOpen()).isFalse();
      assertThatThrownBy(() -> connection.send(Message.once("castwell/x", "y")).await())
          .isInstanceOf(BrokerUnavailable.class)
          .hasMessageStartingWith("broker.unavailable|mqtt://127.0.0.1:");
      connection.abandon();
    }
  }

  @Test
  void whoIsRefusedIsToldSoInOneSentence() {
    try (Mosquitto mosquitto = Mosquitto.start(folder.resolve("broker"), "allow_anonymous false")) {
      assertThatThrownBy(() -> connect(mosquitto, "a", new LinkedBlockingQueue<>(), () -> {}))
          .isInstanceOf(BrokerUnavailable.class)
          .hasMessage("broker.unavailable|%s|broker.refused", mosquitto.url());
    }
  }

  @Test
  void whatTheAccessListRefusesIsNotTakenForSent() throws Exception {
    Path list = Files.writeString(folder.resolve("list"), "topic read castwell/#\n");
    try (Mosquitto mosquitto =
            Mosquitto.start(folder.resolve("broker"), "allow_anonymous true", "acl_file " + list);
        BrokerConnection connection =
            connect(mosquitto, "a", new LinkedBlockingQueue<>(), () -> {})) {
      assertThatThrownBy(() -> connection.send(Message.once("castwell/x/shot", "y")).await())
          .isInstanceOf(BrokerUnavailable.class)
          .hasMessageContaining("|castwell/x/shot|0x");
    }
  }

  /** MQTT 5.0 (OASIS), 3.2.2.3.3: Receive Maximum. */
  @Test
  void noMoreIsSentAtATimeThanTheBrokerTakes() throws Exception {
    try (Mosquitto mosquitto =
        Mosquitto.start(
            folder.resolve("broker"), "allow_anonymous true", "max_inflight_messages 7")) {
      try (BrokerConnection a = connect(mosquitto, "a", new LinkedBlockingQueue<>(), () -> {})) {
        List<BrokerConnection.Sent> sent = new ArrayList<>();
        for (int i = 0; i < 500; i++) {
          sent.add(a.send(Message.once("castwell/x", "y")));
        }
        for (BrokerConnection.Sent one : sent) {
          one.await();
        }
      }
    }
  }

  @Test
  void whatWasKeptFromBeforeIsNotHeard() throws Exception {
    try (Mosquitto mosquitto = Mosquitto.start(folder.resolve("broker"))) {
      BlockingQueue<Message> heard = new LinkedBlockingQueue<>();
      try (BrokerConnection a = connect(mosquitto, "a", heard, () -> {})) {
        a.send(Message.kept("castwell/x/tags/set", "old")).await();
        a.subscribe("castwell/x/tags/set", false);
        a.send(Message.once("castwell/x/tags/set", "new")).await();
        assertThat(next(heard).text()).isEqualTo("new");
      }
    }
  }

  @Test
  void nobodyThereIsToldSoInOneSentence() {
    assertThatThrownBy(
            () ->
                BrokerConnection.open(
                    Broker.open(URI.create("mqtt://127.0.0.1:1")),
                    "a",
                    Optional.empty(),
                    message -> {},
                    () -> {}))
        .isInstanceOf(BrokerUnavailable.class)
        .hasMessageContaining("refused");
  }
}
