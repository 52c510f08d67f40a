package castwell.capture.publish;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.device.Link;
import castwell.capture.device.PortUnavailable;
import castwell.capture.publish.broker.Broker;
import castwell.capture.publish.broker.BrokerConnection;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.Message;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A board's wire over the real broker. */
@Tag("broker")
@Timeout(300)
class WirePortTest {
  @TempDir Path folder;

  private Mosquitto mosquitto() {
    return Mosquitto.start(folder.resolve("broker"));
  }

  static BrokerSettings at(String url) {
    return new BrokerSettings(
        url,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Link listener(Mosquitto mosquitto, String station) throws PortUnavailable {
    return WirePort.ofListener(at(mosquitto.url().toString()), station).open();
  }

  private static Link forwarder(Mosquitto mosquitto, String station) throws PortUnavailable {
    return WirePort.ofForwarder(at(mosquitto.url().toString()), station).open();
  }

  /** Reads until so many bytes came or the link is gone. */
  private static byte[] read(Link link, int count, int bufferSize) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    byte[] buffer = new byte[bufferSize];
    for (int n = link.read(buffer); n >= 0 && all.size() < count; n = link.read(buffer)) {
      all.write(buffer, 0, n);
      if (all.size() >= count) {
        break;
      }
    }
    return all.toByteArray();
  }

  private static String text(Link link, int count) {
    return new String(read(link, count, 4096), US_ASCII);
  }

  @Test
  void bytesPassBothWaysUnchangedHoweverTheyAreCut() throws Exception {
    byte[] every = new byte[2560];
    for (int i = 0; i < every.length; i++) {
      every[i] = (byte) i;
    }
    try (Mosquitto mosquitto = mosquitto();
        Link listener = listener(mosquitto, "lane-1");
        Link board = forwarder(mosquitto, "lane-1")) {
      for (int from = 0, step = 1; from < every.length; from += step, step += 7) {
        board.write(Arrays.copyOfRange(every, from, Math.min(every.length, from + step)));
        // more at a time than the broker takes would be lost, as on a serial wire
        assertThat(read(listener, Math.min(step, every.length - from), 5))
            .isEqualTo(Arrays.copyOfRange(every, from, Math.min(every.length, from + step)));
      }
      listener.write("R,7,1\n".getBytes(US_ASCII));
      assertThat(text(board, 6)).isEqualTo("R,7,1\n");
    }
  }

  /** MQTT 5.0 (OASIS), 3.8.3.1: no local. */
  @Test
  void nobodyHearsItselfOrAnotherLane() throws Exception {
    try (Mosquitto mosquitto = mosquitto();
        Link listener = listener(mosquitto, "lane-1");
        Link board = forwarder(mosquitto, "lane-1");
        Link other = forwarder(mosquitto, "lane-2")) {
      listener.write("?\n".getBytes(US_ASCII));
      other.write("of lane 2\n".getBytes(US_ASCII));
      board.write("of lane 1\n".getBytes(US_ASCII));
      assertThat(text(listener, 10)).isEqualTo("of lane 1\n");
      assertThat(listener.read(new byte[10])).isZero();
      assertThat(text(board, 2)).isEqualTo("?\n");
      assertThat(board.read(new byte[10])).isZero();
    }
  }

  @Test
  void whatCameBeforeTheBrokerWasLostIsReadAndThenTheLinkIsGone() throws Exception {
    try (Mosquitto mosquitto = mosquitto();
        Link listener = listener(mosquitto, "lane-1");
        Link board = forwarder(mosquitto, "lane-1")) {
      board.write("first\n".getBytes(US_ASCII));
      assertThat(text(listener, 6)).isEqualTo("first\n");
      mosquitto.kill();
      assertThat(read(listener, 1, 16)).isEmpty(); // ends because the link is gone
      assertThat(listener.read(new byte[16])).isEqualTo(-1);
      assertThatThrownBy(() -> listener.write(new byte[] {'?'})).hasMessageContaining("broker");
    }
  }

  @Test
  void closingWakesTheReader() throws Exception {
    try (Mosquitto mosquitto = mosquitto()) {
      Link listener = listener(mosquitto, "lane-1");
      Thread closing = new Thread(listener::close);
      closing.start();
      assertThat(read(listener, 1, 16)).isEmpty();
      closing.join();
      listener.close(); // twice does nothing
      assertThat(listener.read(new byte[16])).isEqualTo(-1);
    }
  }

  @Test
  void aMessageThatNoBoardWouldSendIsLeftOut() throws Exception {
    try (Mosquitto mosquitto = mosquitto();
        Link listener = listener(mosquitto, "lane-1");
        BrokerConnection anyone =
            BrokerConnection.open(
                Broker.open(mosquitto.url()), "anyone", Optional.empty(), m -> {}, () -> {})) {
      anyone.send(new Message("castwell/lane-1/wire", new byte[1_000_000], 1, false)).await();
      anyone.send(Message.once("castwell/lane-1/wire", "$H")).await();
      assertThat(text(listener, 2)).isEqualTo("$H");
    }
  }

  @Test
  void aBrokerThatIsntThereIsToldSo() {
    WirePort port = WirePort.ofListener(at("mqtt://127.0.0.1:1"), "lane-1");
    assertThatThrownBy(port::open)
        .isInstanceOf(PortUnavailable.class)
        .hasMessageStartingWith("broker.unavailable|mqtt://127.0.0.1:1|");
    assertThatThrownBy(WirePort.ofListener(at("what"), "lane-1")::open)
        .isInstanceOf(PortUnavailable.class)
        .hasMessageContaining("a broker's address is mqtt://HOST");
    assertThat(port.name()).isEqualTo("castwell/lane-1/wire at mqtt://127.0.0.1:1");
  }
}
