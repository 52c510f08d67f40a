package castwell.web;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.FuzzInputs;
import castwell.capture.Until;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Any request is answered, and never by a fault of the server's own. {@code .ci/fuzz 60 http} looks
 * for more inputs.
 */
public class HttpFuzzTest {
  /** What is taken in makes lists longer and answers slower. */
  private static final int REQUESTS_A_STORE = 3_000;

  private static Served served;
  private static int requests;

  static Stream<Path> inputs() {
    return FuzzInputs.of("http");
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void isAnswered(Path input) {
    fuzzerTestOneInput(FuzzInputs.read(input));
  }

  /** The fuzzer's way in: method and target in the first line, the body below. */
  public static void fuzzerTestOneInput(byte[] input) {
    serve();
    int end = 0;
    while (end < input.length && input[end] != '\n' && input[end] != '\r') {
      end++;
    }
    String line = new String(input, 0, end, ISO_8859_1);
    String answer =
        answer(line, Arrays.copyOfRange(input, Math.min(end + 1, input.length), input.length));
    assertThat(answer).as(line).matches("(?s)HTTP/1\\.1 [2-4]\\d\\d .*");
    if (line.contains(" /api/") && answer.charAt(9) == '4') {
      String head = answer.toLowerCase(Locale.ROOT);
      assertThat(head).as(line).contains("content-type: application/problem+json");
    }
  }

  private static String answer(String line, byte[] body) {
    try (Socket socket = new Socket("127.0.0.1", served.httpPort())) {
      socket.setSoTimeout((int) Until.PATIENCE.toMillis());
      ByteArrayOutputStream request = new ByteArrayOutputStream();
      request.writeBytes(
          """
          %s HTTP/1.1\r
          Host: 127.0.0.1\r
          Content-Type: application/json\r
          Content-Length: %d\r
          Connection: close\r
          \r
          """
              .formatted(line, body.length)
              .getBytes(ISO_8859_1));
      request.writeBytes(body);
      socket.getOutputStream().write(request.toByteArray());
      return read(socket.getInputStream());
    } catch (IOException e) {
      throw new UncheckedIOException(line, e);
    }
  }

  /** The live feed never ends, so its head will do. */
  private static String read(InputStream in) throws IOException {
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    byte[] some = new byte[8192];
    for (int n = in.read(some); n >= 0; n = in.read(some)) {
      answer.write(some, 0, n);
      if (answer.toString(ISO_8859_1).contains("text/event-stream")) {
        break;
      }
    }
    return answer.toString(ISO_8859_1);
  }

  private static void serve() {
    if (requests++ % REQUESTS_A_STORE == 0) {
      if (served != null) {
        served.close();
      }
      Path folder = FuzzInputs.folder();
      Recordings.replayInto(folder);
      served = Served.withoutBoard(folder, Recordings.STATION);
      for (String bow : new String[] {"Ash", "Yew"}) {
        answer(
            "POST /api/bows",
            "{\"name\":\"%s\",\"draw_weight_lb\":52,\"draw_length_in\":27,\"state_on\":\"2026-04-01\"}"
                .formatted(bow)
                .getBytes(ISO_8859_1));
      }
      answer("POST /api/arrows", "{\"name\":\"A1\",\"mass_gr\":500}".getBytes(ISO_8859_1));
    }
  }
}
