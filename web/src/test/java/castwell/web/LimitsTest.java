package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.web.RawHttp.Answer;
import castwell.web.http.guard.Refusals.Kind;
import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** One outsider can't take what all others need: connections, live views, threads. */
@Tag("slow")
@Timeout(300)
class LimitsTest {

  @TempDir Path folder;
  private Served served;
  private final List<Socket> open = new ArrayList<>();

  @AfterEach
  void end() throws IOException {
    for (Socket socket : open) {
      socket.close();
    }
    served.close();
  }

  private Socket connect(String from) throws IOException {
    Socket socket = RawHttp.connect(from, served.httpPort());
    open.add(socket);
    return socket;
  }

  private static void write(Socket socket, String text) throws IOException {
    socket.getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII));
  }

  private Socket live(String from) throws IOException {
    Socket socket = connect(from);
    write(socket, "GET /api/live HTTP/1.1\r\nHost: localhost\r\n\r\n");
    return socket;
  }

  private static String statusLine(Socket socket) throws IOException {
    StringBuilder line = new StringBuilder();
    for (int c = socket.getInputStream().read(); c >= 0 && c != '\r'; ) {
      line.append((char) c);
      c = socket.getInputStream().read();
    }
    return line.toString();
  }

  private int ask(String from) throws IOException {
    Socket socket = connect(from);
    write(socket, "GET /api/range HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
    return RawHttp.parse(RawHttp.all(socket.getInputStream())).status();
  }

  @Test
  void oneAddressHasOnlySoManyConnectionsAndOthersStillGetIn() throws IOException {
    served = Served.with(folder, "connections_per_address = 5");
    for (int i = 0; i < 5; i++) {
      live("127.0.0.2");
    }
    Until.holds("five readers", () -> statusOf("127.0.0.2") == 0);
    assertThat(ask("127.0.0.3")).isEqualTo(200);
    assertThat(served.refused(Kind.TOO_MANY_CONNECTIONS)).isPositive();
    open.get(0).close();
    // Whoever goes makes room.
    Until.holds("room", () -> statusOf("127.0.0.2") == 200);
  }

  private int statusOf(String from) {
    try {
      return ask(from);
    } catch (IOException e) {
      return 0; // reset
    }
  }

  @Test
  void allTogetherHaveOnlySoManyConnections() throws IOException {
    served = Served.with(folder, "connections = 5");
    for (int i = 0; i < 5; i++) {
      assertThat(statusLine(live("127.0.0." + (2 + i)))).contains("200");
    }
    assertThat(statusOf("127.0.0.9")).isZero();
    open.get(0).close();
    Until.holds("room", () -> statusOf("127.0.0.9") == 200);
  }

  @Test
  void liveViewsAreBoundedAndTheRefusalSaysSo() throws IOException {
    served = Served.with(folder, "readers = 3\nreaders_per_address = 2");
    assertThat(statusLine(live("127.0.0.2"))).contains("200");
    assertThat(statusLine(live("127.0.0.2"))).contains("200");
    assertThat(statusLine(live("127.0.0.2"))).contains("429");
    assertThat(statusLine(live("127.0.0.3"))).contains("200");
    Socket refused = live("127.0.0.4");
    Answer answer = RawHttp.parse(readSome(refused));
    assertThat(answer.status()).isEqualTo(503);
    assertThat(answer.header("Retry-After")).hasValue("20");
    assertThat(answer.json().path("detail").asText()).startsWith("All live views there may be");
    assertThat(served.refused(Kind.TOO_MANY_READERS)).isEqualTo(2);
    assertThat(ask("127.0.0.4")).isEqualTo(200); // the rest goes on
  }

  /** Until the end of the problem, for the connection stays. */
  private static String readSome(Socket socket) throws IOException {
    StringBuilder read = new StringBuilder();
    while (read.indexOf("}") < 0) {
      read.append((char) socket.getInputStream().read());
    }
    return read.toString();
  }

  /** A byte now and then, so that it is never idle, and never a whole request. */
  @Test
  void whoeverNeverFinishesARequestIsLeft() throws IOException {
    served = Served.with(folder, "slow_request_s = 3");
    Socket slow = connect("127.0.0.2");
    write(slow, "GET /api/range HTTP/1.1\r\nHost: localhost\r\nA: ");
    Socket silent = connect("127.0.0.2");
    Socket reader = live("127.0.0.2");
    Until.holds("it is left", () -> !takes(slow));
    assertThat(RawHttp.all(silent.getInputStream())).isEmpty();
    assertThat(served.refused(Kind.TOO_SLOW)).isOne(); // whoever is silent is merely idle
    assertThat(statusLine(reader)).contains("200"); // who is answered isn't waited for
    assertThat(reader.getInputStream().available()).isGreaterThanOrEqualTo(0);
    assertThat(ask("127.0.0.2")).isEqualTo(200);
  }

  private static boolean takes(Socket socket) {
    try {
      write(socket, "x");
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void whoeverSendsABodyByteByByteIsLeft() throws IOException {
    served = Served.with(folder, "");
    List<Socket> slow = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      Socket socket = connect("127.0.0.2");
      write(
          socket,
          "POST /api/arrows HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 60000\r\n\r\n{");
      slow.add(socket);
    }
    // They hold no more threads than one address may: others are answered meanwhile.
    assertThat(ask("127.0.0.3")).isEqualTo(200);
    for (int round = 0; round < 4; round++) {
      for (Socket socket : slow) {
        try {
          write(socket, " ");
        } catch (IOException e) {
          // closed already
        }
      }
      LockSupport.parkNanos(500_000_000); // 2 bytes a second
      assertThat(ask("127.0.0.3")).isEqualTo(200);
    }
    assertThat(RawHttp.parse(RawHttp.all(slow.get(0).getInputStream())).status()).isIn(0, 400);
  }
}
