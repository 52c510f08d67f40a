package castwell.capture.rehearsal;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.Until;
import castwell.capture.device.Link;
import castwell.capture.device.PortReader;
import castwell.capture.device.PortUnavailable;
import castwell.capture.device.Signal;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;

class RehearsalPortTest {

  private static RehearsalPort port() {
    return new RehearsalPort(
        RehearsalSettings.of(1, 7), () -> System.nanoTime() / 1000, Optional::empty);
  }

  @Test
  void speaksInRealTimeThroughTheSameReaderAsABoard() throws Exception {
    List<Signal> signals = new CopyOnWriteArrayList<>();
    PortReader reader =
        new PortReader("lane 1", port(), () -> System.nanoTime() / 1000, signals::add);
    Thread thread = new Thread(reader);
    thread.start();
    Until.holds("the link", () -> !signals.isEmpty());
    assertThat(signals.get(0)).isInstanceOf(Signal.Opened.class);
    ((Signal.Opened) signals.get(0)).link().write("?\n".getBytes(US_ASCII));
    Until.holds(
        "identity and beat", () -> text(signals).contains("$I,") && text(signals).contains("$H,"));
    assertThat(text(signals)).startsWith("$").endsWith("\r\n");
    reader.close();
    thread.join(Until.PATIENCE.toMillis());
    assertThat(thread.isAlive()).isFalse();
  }

  private static String text(List<Signal> signals) {
    StringBuilder text = new StringBuilder();
    for (Signal signal : signals) {
      if (signal instanceof Signal.Received received) {
        text.append(new String(received.bytes(), US_ASCII));
      }
    }
    return text.toString();
  }

  @Test
  void opensOnceAtATime() throws Exception {
    RehearsalPort port = port();
    Link link = port.open();
    assertThatThrownBy(port::open)
        .isInstanceOf(PortUnavailable.class)
        .hasMessage("port.rehearsing");
    link.close();
    link.close();
    assertThat(link.read(new byte[1])).isEqualTo(-1);
    port.open().close();
  }
}
