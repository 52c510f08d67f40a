package castwell.web;

import castwell.capture.Until;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** Requests to the letter, over a plain socket, as no HTTP client would let them be written. */
final class RawHttp {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private RawHttp() {}

  /**
   * @param lines the status line and the header
   */
  record Answer(List<String> lines, String body) {
    int status() {
      return lines.isEmpty() ? 0 : Integer.parseInt(lines.get(0).split(" ")[1]);
    }

    Optional<String> header(String name) {
      return lines.stream()
          .skip(1)
          .filter(line -> line.regionMatches(true, 0, name + ":", 0, name.length() + 1))
          .map(line -> line.substring(name.length() + 1).strip())
          .findFirst();
    }

    JsonNode json() {
      try {
        return JSON.readTree(body);
      } catch (IOException e) {
        throw new UncheckedIOException(body, e);
      }
    }
  }

  /**
   * One request, and the connection closed after it.
   *
   * @param head the request line and the header's lines, without their ends
   */
  static Answer ask(int port, String body, String... head) {
    String length = body.isEmpty() ? "" : "Content-Length: " + bytes(body).length + "\r\n";
    String request = String.join("\r\n", head) + "\r\n" + length + "Connection: close\r\n\r\n";
    return send(port, request + body);
  }

  /** These bytes, and all that comes back until the other side closes. */
  static Answer send(int port, String request) {
    try (Socket socket = connect("127.0.0.1", port)) {
      socket.getOutputStream().write(bytes(request));
      return parse(all(socket.getInputStream()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * @param from an address of this computer's loopback network; each of 127.0.0.0/8 is one
   */
  static Socket connect(String from, int port) throws IOException {
    Socket socket = new Socket();
    socket.setSoTimeout((int) Until.PATIENCE.toMillis());
    socket.bind(new InetSocketAddress(from, 0));
    socket.connect(new InetSocketAddress("127.0.0.1", port));
    return socket;
  }

  /** All until the end, however it ends. */
  static String all(InputStream in) throws IOException {
    ByteArrayOutputStream read = new ByteArrayOutputStream();
    byte[] some = new byte[8192];
    try {
      for (int n = in.read(some); n >= 0; n = in.read(some)) {
        read.write(some, 0, n);
      }
    } catch (SocketException e) {
      // Closed with what it hadn't read: a reset.
    }
    return read.toString(StandardCharsets.UTF_8);
  }

  static Answer parse(String answer) {
    int end = answer.indexOf("\r\n\r\n");
    return end < 0
        ? new Answer(List.of(), answer)
        : new Answer(answer.substring(0, end).lines().toList(), answer.substring(end + 4));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
