package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.announce.Announcer;
import castwell.capture.device.Link;
import castwell.capture.device.Port;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.wire.Crc16;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The host is held up for longer than a board may be silent, while the board beats on. */
@Timeout(300)
class BusyHostTest {
  @TempDir Path folder;

  private final AtomicLong micros = new AtomicLong();
  private final BlockingQueue<byte[]> said = new ArrayBlockingQueue<>(100);
  private final AtomicLong read = new AtomicLong();

  private static byte[] sentence(String body) {
    byte[] bytes = body.getBytes(StandardCharsets.US_ASCII);
    String crc = String.format(Locale.ROOT, "%04X", Crc16.of(bytes, 0, bytes.length));
    return ("$" + body + "*" + crc + "\r\n").getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] beat(int second) {
    return sentence("H,%d,7,%d,0,0,0,0,CC,,,,,,".formatted(1 + second, 2_000_000L * second));
  }

  /** What is said comes at once, with the clock as it stands then. */
  private final class Board implements Port, Link {
    @Override
    public String name() {
      return "board";
    }

    @Override
    public Link open() {
      return this;
    }

    @Override
    public int read(byte[] buffer) {
      try {
        byte[] bytes = said.take();
        System.arraycopy(bytes, 0, buffer, 0, bytes.length);
        read.incrementAndGet();
        return bytes.length;
      } catch (InterruptedException e) {
        return -1;
      }
    }

    @Override
    public void write(byte[] bytes) {}

    @Override
    public void close() {}
  }

  @Test
  void whatItHasNotComeToYetIsNotTakenForSilence() throws Exception {
    List<LinkState.State> states = new CopyOnWriteArrayList<>();
    CountDownLatch held = new CountDownLatch(1);
    AtomicReference<Throwable> died = new AtomicReference<>();
    try (RangeBench bench = RangeBench.in(folder)) {
      bench
          .announcer()
          .add(
              new HoldingUp(
                  state -> {
                    states.add(state.state());
                    if (state.state() == LinkState.State.ONLINE) {
                      awaitQuietly(held);
                    }
                  }));
      try (Capture capture =
          new Capture(
              Map.of("lane", new Board()),
              bench.store(),
              RangeBench.SETTINGS,
              bench.commands(),
              bench.announcer(),
              bench.clock(),
              micros::get)) {
        capture.start(died::set);
        said.add(sentence("I,0,1,test,gate-1,7,2000000,2,0,0,64,P"));
        said.add(beat(0));
        for (int second = 1; second <= 10; second++) {
          long before = 1 + second;
          Until.holds("the last beat", () -> read.get() >= before);
          micros.addAndGet(1_000_000);
          said.add(beat(second));
        }
        Until.holds("all beats", () -> read.get() == 12);
        held.countDown();
      }
    }
    assertThat(died.get()).isNull();
    assertThat(states).contains(LinkState.State.ONLINE).doesNotContain(LinkState.State.OFFLINE);
  }

  private static void awaitQuietly(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private record HoldingUp(Consumer<LinkState> states) implements Announcer.Listener {
    @Override
    public void fedMore() {}

    @Override
    public void linkChanged(LinkState state) {
      states.accept(state);
    }

    @Override
    public void storeChanged(StoreState state) {}
  }
}
