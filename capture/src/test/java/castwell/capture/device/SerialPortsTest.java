package castwell.capture.device;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.AnotherJvm;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against real pseudo-terminals of the kernel, through the serial library. */
@Tag("slow")
class SerialPortsTest {
  /** From the protocol's own words; check sums by the CRC that its catalogue value proves. */
  private static final String IDENTITY = "$I,61033,1,sim-1.0,gate-1,7,2000000,2,0,0,64,P*2576\r\n";

  @TempDir Path folder;

  private SerialPorts ports(PluggedIn... pluggedIn) {
    return new SerialPorts(
        () -> List.of(pluggedIn), () -> System.nanoTime() / 1000, Duration.ofSeconds(2));
  }

  private static PortSpec.Serial serial(String text) {
    return (PortSpec.Serial) PortSpec.parse(text);
  }

  private static PluggedIn plain(PtyPeer peer) {
    return new PluggedIn(peer.path().toString(), -1, -1, "");
  }

  private static String identity(String line) {
    return line.equals("?") ? IDENTITY : "";
  }

  @Test
  void bytesPassBothWaysUnchanged() throws Exception {
    try (PtyPeer peer = PtyPeer.at(folder.resolve("board"));
        Link link = ports().reserve(serial(peer.path().toString())).open()) {
      byte[] all = new byte[256];
      for (int i = 0; i < all.length; i++) {
        all[i] = (byte) i;
      }
      peer.write(all);
      byte[] got = new byte[256];
      int count = 0;
      while (count < got.length) {
        byte[] buffer = new byte[256];
        int read = link.read(buffer);
        assertThat(read).isPositive();
        System.arraycopy(buffer, 0, got, count, read);
        count += read;
      }
      assertThat(got).isEqualTo(all);
      link.write("R,7,1\n".getBytes(US_ASCII));
      peer.awaitHeard("R,7,1\n");
    }
  }

  @Test
  void anAbsentPortIsToldSo() {
    Port port = ports().reserve(serial(folder.resolve("ttyNone").toString()));
    assertThatThrownBy(port::open)
        .isInstanceOf(PortUnavailable.class)
        .hasMessage("port.absent|%s", port.name());
  }

  @Test
  void whatIsNoPortIsToldSo() throws Exception {
    Path file = Files.createFile(folder.resolve("file"));
    assertThatThrownBy(ports().reserve(serial(file.toString()))::open)
        .isInstanceOf(PortUnavailable.class)
        .hasMessageContaining("port.no_port|");
    assertThatThrownBy(ports().reserve(serial("/dev/null"))::open)
        .isInstanceOf(PortUnavailable.class)
        .hasMessageContaining("/dev/null");
  }

  @Test
  void anotherProgramsPortIsRefusedUntilItIsFree() throws Exception {
    try (PtyPeer peer = PtyPeer.at(folder.resolve("board"))) {
      Port port = ports().reserve(serial(peer.path().toString()));
      Path unpacked = folder.resolve("native");
      try (AnotherJvm other = AnotherProgram.opening(peer.path(), unpacked)) {
        assertThat(other.says()).isEqualTo("open");
        assertThatThrownBy(port::open)
            .isInstanceOf(PortUnavailable.class)
            .hasMessageContaining("port.busy|");
        // The kernel's own list of what that process has loaded
        assertThat(other.says()).startsWith(unpacked.toRealPath().toString());
      }
      try (Link link = port.open();
          AnotherJvm other = AnotherProgram.opening(peer.path(), unpacked)) {
        assertThat(other.says()).contains("port.busy|");
        assertThat(link.read(new byte[1])).isZero();
      }
    }
  }

  @Test
  void anotherStationsPortIsRefused() throws Exception {
    try (PtyPeer peer = PtyPeer.at(folder.resolve("board"))) {
      SerialPorts ports = ports();
      PortSpec.Serial spec = serial(peer.path().toString());
      Link held = ports.reserve(spec).open();
      assertThatThrownBy(ports.reserve(spec)::open)
          .isInstanceOf(PortUnavailable.class)
          .hasMessageContaining("port.claimed|");
      held.close();
      held.close();
      ports.reserve(spec).open().close();
    }
  }

  @Test
  void aPortGoneIsToldByTheRead() throws Exception {
    try (PtyPeer peer = PtyPeer.at(folder.resolve("board"));
        Link link = ports().reserve(serial(peer.path().toString())).open()) {
      assertThat(link.read(new byte[10])).isZero();
      peer.hangUp();
      assertThat(link.read(new byte[10])).isEqualTo(-1);
    }
  }

  @Test
  void usbIdentityLeadsToThePath() throws Exception {
    try (PtyPeer one = PtyPeer.at(folder.resolve("one"));
        PtyPeer two = PtyPeer.at(folder.resolve("two"))) {
      SerialPorts ports =
          ports(
              new PluggedIn(one.path().toString(), 0x2341, 0x0043, "A1"),
              new PluggedIn(two.path().toString(), 0x2341, 0x0043, "B2"));
      try (Link link = ports.reserve(serial("usb:2341:0043:B2")).open()) {
        link.write("?\n".getBytes(US_ASCII));
        two.awaitHeard("?\n");
      }
      assertThat(one.heard()).isEmpty();
      assertThatThrownBy(ports.reserve(serial("usb:2341:0044"))::open)
          .isInstanceOf(PortUnavailable.class)
          .hasMessageContaining("usb:2341:0044");
    }
  }

  @Test
  void autoFindsTheOneThatAnswersAndAsksItFirstNextTime() throws Exception {
    try (PtyPeer silent = PtyPeer.at(folder.resolve("silent"));
        PtyPeer garbage =
            PtyPeer.at(folder.resolve("garbage"), l -> "\0\u00FF$I,1*0000\r\n" + IDENTITY.trim());
        PtyPeer board = PtyPeer.at(folder.resolve("board"), SerialPortsTest::identity)) {
      Port port = ports(plain(silent), plain(garbage), plain(board)).reserve(serial("auto"));
      try (Link link = port.open()) {
        byte[] buffer = new byte[200];
        assertThat(new String(buffer, 0, link.read(buffer), US_ASCII)).startsWith(IDENTITY.trim());
      }
      assertThat(port.name()).isEqualTo("auto (" + board.path() + ")");
      String before = silent.heard();
      assertThat(before).startsWith("?\n");
      port.open().close();
      assertThat(silent.heard()).isEqualTo(before);
    }
  }

  @Test
  void autoLeavesOtherStationsPortsAlone() throws Exception {
    try (PtyPeer promised = PtyPeer.at(folder.resolve("promised"), SerialPortsTest::identity);
        PtyPeer taken = PtyPeer.at(folder.resolve("taken"), SerialPortsTest::identity)) {
      SerialPorts ports = ports(plain(promised), plain(taken));
      ports.reserve(serial(promised.path().toString()));
      try (Link first = ports.reserve(serial("auto")).open()) {
        assertThat(first.read(new byte[200])).isPositive();
        assertThatThrownBy(ports.reserve(serial("auto"))::open)
            .isInstanceOf(PortUnavailable.class)
            .hasMessageContaining("port.claimed|" + taken.path());
      }
      assertThat(promised.heard()).isEmpty();
    }
  }
}
