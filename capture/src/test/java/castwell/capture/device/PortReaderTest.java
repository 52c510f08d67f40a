package castwell.capture.device;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.wording.Phrase;
import castwell.capture.Until;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Against real pseudo-terminals of the kernel, through the serial library. */
@Timeout(300)
class PortReaderTest {
  @TempDir Path folder;

  private final Signals signals = new Signals();

  private Port port(Path path) {
    return new SerialPorts(() -> System.nanoTime() / 1000)
        .reserve(new PortSpec.ByPath(path.toString()));
  }

  @Test
  void aBoardPulledOutIsFoundAgainEachTime() throws Exception {
    int times = 10;
    StringBuilder sent = new StringBuilder();
    try (PtyPeer peer = PtyPeer.at(folder.resolve("board"))) {
      PortReader reader =
          new PortReader(
              "lane 1", port(peer.path()), () -> System.nanoTime() / 1000, signals, ms -> {});
      Thread thread = new Thread(reader);
      thread.start();
      for (int i = 1; i <= times; i++) {
        signals.await(Signal.Opened.class, i);
        String text = "time " + i + "\r\n";
        sent.append(text);
        peer.write(text);
        Until.holds(text, () -> signals.bytes().length == sent.length());
        peer.hangUp();
        signals.await(Signal.Closed.class, i);
        peer.plugIn();
      }
      signals.await(Signal.Opened.class, times + 1);
      reader.close();
      thread.join(Until.PATIENCE.toMillis());
      assertThat(thread.isAlive()).isFalse();
    }
    assertThat(new String(signals.bytes(), US_ASCII)).isEqualTo(sent.toString());
    assertThat(signals.all()).allSatisfy(s -> assertThat(s.station()).isEqualTo("lane 1"));
  }

  @Test
  void theDelayGrowsToFiveSecondsAndStartsOverAfterBytes() throws Exception {
    // Board protocol, what a host must do, 5: a delay that grows to 5 s and no further
    List<Long> pauses = new ArrayList<>();
    try (PtyPeer peer = PtyPeer.at(folder.resolve("board"))) {
      peer.hangUp();
      PortReader reader =
          new PortReader(
              "lane 1",
              port(peer.path()),
              () -> System.nanoTime() / 1000,
              signals,
              millis -> {
                pauses.add(millis);
                if (pauses.size() == 7) {
                  peer.plugIn();
                  peer.write("hello\n");
                }
                if (pauses.size() == 9) {
                  throw new InterruptedException();
                }
              });
      Thread thread = new Thread(reader);
      thread.start();
      Until.holds("bytes", () -> signals.bytes().length == 6);
      peer.hangUp();
      thread.join(Until.PATIENCE.toMillis());
    }
    assertThat(pauses).containsExactly(250L, 500L, 1000L, 2000L, 4000L, 5000L, 5000L, 250L, 500L);
  }

  @Test
  void theSameFailureIsToldOnce() {
    AtomicLong pauses = new AtomicLong();
    PortReader reader =
        new PortReader(
            "lane 1",
            port(folder.resolve("none")),
            () -> 42,
            signals,
            millis -> {
              if (pauses.incrementAndGet() == 5) {
                throw new InterruptedException();
              }
            });
    reader.run();
    assertThat(signals.all())
        .containsExactly(
            new Signal.Closed(
                "lane 1", 42, Phrase.of("port.absent", folder.resolve("none").toString())));
  }

  @Test
  void closingEndsAWaitAtOnce() throws Exception {
    PortReader reader = new PortReader("lane 1", port(folder.resolve("none")), () -> 0, signals);
    Thread thread = new Thread(reader);
    thread.start();
    signals.await(Signal.Closed.class, 1);
    reader.close();
    thread.join(Until.PATIENCE.toMillis());
    assertThat(thread.isAlive()).isFalse();
  }
}
