package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * A reader of server-sent events (WHATWG HTML, 9.2.6) over a plain socket: it speaks HTTP/1.0, so
 * that no chunks come, and gives up when nothing comes.
 */
final class FeedReader implements AutoCloseable {
  private static final int TIGHT = 2048;
  private static final int ROOMY = 1 << 18;
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final Socket socket;
  private final BufferedReader lines;

  /**
   * @param id empty where the event has none
   */
  record Event(OptionalLong id, String kind, String text) {
    JsonNode data() throws IOException {
      return JSON.readTree(text);
    }
  }

  private FeedReader(Socket socket) throws IOException {
    this.socket = socket;
    this.lines =
        new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
  }

  static FeedReader after(URI live, long id) throws IOException {
    return after(live, id, "");
  }

  /**
   * @param more of the query
   */
  static FeedReader after(URI live, long id, String more) throws IOException {
    return new FeedReader(asked(live, live.getPath() + "?after=" + id + more, ""));
  }

  /** One that takes what comes at once, as a browser does. */
  static FeedReader prompt(URI live) throws IOException {
    return new FeedReader(asked(live, live.getPath() + "?after=0", "", ROOMY));
  }

  static FeedReader resumed(URI live, long lastEventId) throws IOException {
    return new FeedReader(asked(live, live.getPath(), "Last-Event-ID: " + lastEventId + "\r\n"));
  }

  /** Takes from the network only what it has to, until it begins to read. */
  private static Socket asked(URI live, String target, String header) throws IOException {
    return asked(live, target, header, TIGHT);
  }

  private static Socket asked(URI live, String target, String header, int room) throws IOException {
    Socket socket = new Socket();
    socket.setReceiveBufferSize(room);
    socket.setSoTimeout((int) Until.PATIENCE.toMillis());
    socket.connect(new InetSocketAddress(live.getHost(), live.getPort()));
    String request = "GET " + target + " HTTP/1.0\r\n" + header + "\r\n";
    socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
    return socket;
  }

  /** Waits for the first line of the answer: the server has taken the request by then. */
  void awaitAnswer() throws IOException {
    assertThat(lines.readLine()).contains("200");
  }

  /** Waits for the next event that has an id. */
  Event next() throws IOException {
    Event event = any();
    while (event.id().isEmpty()) {
      event = any();
    }
    return event;
  }

  /** Waits for the next event of that kind. */
  Event anyOf(String kind) throws IOException {
    Event event = any();
    while (!event.kind().equals(kind)) {
      event = any();
    }
    return event;
  }

  /** The kinds of the events that come, up to the first of that kind. */
  List<String> upTo(String kind) throws IOException {
    List<String> kinds = new ArrayList<>();
    do {
      kinds.add(any().kind());
    } while (!kinds.get(kinds.size() - 1).equals(kind));
    return kinds;
  }

  private Event any() throws IOException {
    OptionalLong id = OptionalLong.empty();
    String kind = "message";
    StringBuilder data = new StringBuilder();
    while (true) {
      String line = lines.readLine();
      if (line == null) {
        throw new IOException("the feed ended");
      } else if (line.startsWith("id: ")) {
        id = OptionalLong.of(Long.parseLong(line.substring(4)));
      } else if (line.startsWith("event: ")) {
        kind = line.substring(7);
      } else if (line.startsWith("data: ")) {
        data.append(line, 6, line.length());
      } else if (line.isEmpty() && !data.isEmpty()) {
        return new Event(id, kind, data.toString());
      }
    }
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
