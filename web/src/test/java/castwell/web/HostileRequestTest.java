package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import castwell.web.RawHttp.Answer;
import castwell.web.http.guard.Refusals.Kind;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What no browser sends, to Jetty as it is set up here. */
@Timeout(300)
class HostileRequestTest {
  private static final String HEAD = "POST /api/arrows HTTP/1.1\r\nHost: localhost\r\n";
  private static final String JSON = "Content-Type: application/json\r\n";
  private static final String ARROW = "{\"name\":\"Smuggled\",\"mass_gr\":500}";
  private static final String SECOND =
      HEAD + JSON + "Content-Length: " + ARROW.length() + "\r\n\r\n" + ARROW;

  @TempDir static Path folder;
  private static Served served;

  @BeforeAll
  static void serve() throws Exception {
    Files.writeString(folder.resolve("secret.txt"), "the secret");
    served = Served.withoutBoard(folder, "range");
  }

  @AfterAll
  static void end() {
    served.close();
  }

  /** RFC 9112: each is a way to make a proxy and a server see different requests. */
  static Stream<Arguments> smuggled() {
    String get = "GET /api/range HTTP/1.1\r\nHost: localhost\r\n";
    return Stream.of(
        arguments(
            "6.3: Content-Length with Transfer-Encoding",
            HEAD
                + JSON
                + "Content-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n"
                + SECOND),
        arguments(
            "6.3: two Content-Lengths that differ",
            HEAD + JSON + "Content-Length: 0\r\nContent-Length: 9\r\n\r\n" + SECOND),
        arguments(
            "6.3: a list of Content-Lengths",
            HEAD + JSON + "Content-Length: 0, 9\r\n\r\n" + SECOND),
        arguments(
            "6.3: a signed Content-Length", HEAD + JSON + "Content-Length: +0\r\n\r\n" + SECOND),
        arguments(
            "6.3: a Content-Length too large for any number",
            HEAD + JSON + "Content-Length: 99999999999999999999\r\n\r\n" + SECOND),
        arguments(
            "6.1: chunked isn't the last coding",
            HEAD + JSON + "Transfer-Encoding: chunked, identity\r\n\r\n0\r\n\r\n" + SECOND),
        arguments(
            "6.1: chunked twice",
            HEAD
                + JSON
                + "Transfer-Encoding: chunked\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n"
                + SECOND),
        arguments(
            "6.1: a coding nobody knows",
            HEAD + JSON + "Transfer-Encoding: xchunked\r\n\r\n0\r\n\r\n" + SECOND),
        arguments("5.2: a folded line", get + "A: b\r\n c\r\n\r\n" + SECOND),
        arguments("5.1: a space before the colon", get + "A : b\r\n\r\n" + SECOND),
        arguments("5: a line without a colon", get + "A\r\n\r\n" + SECOND),
        arguments("2.2: a bare LF ends a line", get + "A: b\n\r\n" + SECOND),
        arguments("2.2: a bare LF ends the header", get + "A: b\r\n\n" + SECOND),
        arguments("2.2: a bare CR", get + "A: b\rC: d\r\n\r\n" + SECOND),
        arguments("RFC 9110, 5.5: a NUL in a value", get + "A: b\u0000c\r\n\r\n" + SECOND),
        arguments(
            "2.2: a space before the first header", "GET / HTTP/1.1\r\n Host: localhost\r\n\r\n"),
        arguments(
            "7.1: a chunk's size isn't hexadecimal",
            HEAD + JSON + "Transfer-Encoding: chunked\r\n\r\n0x0\r\n\r\n" + SECOND),
        arguments(
            "7.1: a bare LF ends a chunk's size",
            HEAD + JSON + "Transfer-Encoding: chunked\r\n\r\n0\n\r\n" + SECOND),
        arguments("3.2: two Hosts", get + "Host: localhost:1\r\n\r\n" + SECOND),
        arguments("3.2: no Host", "GET / HTTP/1.1\r\nA: b\r\n\r\n" + SECOND),
        arguments(
            "3: a space within the target", "GET /api /range HTTP/1.1\r\nHost: localhost\r\n\r\n"),
        arguments("2.3: a version there is none of", "GET / HTTP/9.9\r\nHost: localhost\r\n\r\n"),
        arguments("HTTP/0.9", "GET /\r\n"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("smuggled")
  void whatCanBeReadInTwoWaysIsReadInNone(String what, String request) {
    Answer answer = RawHttp.send(served.httpPort(), request);
    assertThat(answer.status()).as("%s", answer).isIn(400, 501, 505);
    assertThat(answer.header("Content-Type").orElse("")).startsWith("application/problem+json");
    assertThat(answer.body())
        .doesNotContain("HTTP/1.1 ", "etty", "Exception"); // and only one answer
    assertThat(served.store().<Integer>read(t -> t.rack().arrows().size())).isZero();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../secret.txt",
        "/../../../../../../../../etc/passwd",
        "/%2e%2e/secret.txt",
        "/..%2fsecret.txt",
        "/%2e%2e%2f%2e%2e%2fetc%2fpasswd",
        "/%252e%252e/secret.txt",
        "/..;/secret.txt",
        "/..\\secret.txt",
        "/..%5csecret.txt",
        "/%c0%ae%c0%ae/secret.txt",
        "//etc/passwd",
        "/./../settings/defaults.toml",
        "/range.js/../../settings/defaults.toml",
        "/..%2fsettings%2fdefaults.toml",
        "/%00",
        "/range.js%00.html",
        "/castwell.db",
        "/../page/range.js",
        "/api/sessions/..%2f..%2fsecret.txt/shots",
        "/api/sessions/%2e%2e%2fsecret.txt/shots",
        "/api/shots/..%2f..%2fsecret.txt",
        "/api/reports/session/..%2fsecret.txt",
        "/api/bows/..%2f..%2fetc%2fpasswd/force-draw",
        "file:///etc/passwd"
      })
  void noPathLeadsOutOfThePagesFolder(String path) {
    Answer answer =
        RawHttp.send(
            served.httpPort(),
            "GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
    assertThat(answer.status()).as("%s", answer).isIn(200, 400, 404, 405);
    assertThat(answer.status() == 200 ? answer.body() : "[]").isEqualTo("[]"); // no such session
    assertThat(answer.body()).doesNotContain("the secret", "root:", "listen =", "Exception");
  }

  @Test
  void aTooLargeHeaderOrAddressIsRefused() {
    String large = "x".repeat(20_000);
    for (String request :
        new String[] {
          "GET / HTTP/1.1\r\nHost: localhost\r\nA: " + large + "\r\n\r\n",
          "GET /" + large + " HTTP/1.1\r\nHost: localhost\r\n\r\n",
          "GET / HTTP/1.1\r\nHost: localhost\r\n" + "A: b\r\n".repeat(5_000) + "\r\n"
        }) {
      assertThat(RawHttp.send(served.httpPort(), request).status()).isIn(0, 414, 431);
    }
    assertThat(served.refused(Kind.BAD_REQUEST)).isPositive();
  }

  /** It says beforehand how much will come; not a byte of it is awaited. */
  @Test
  void aBodyThatSaysItIsTooLargeIsRefusedAtOnce() {
    for (String path : new String[] {"/api/arrows", "/api/import", "/api/admission"}) {
      Answer answer =
          RawHttp.send(
              served.httpPort(),
              "POST "
                  + path
                  + " HTTP/1.1\r\nHost: localhost\r\n"
                  + JSON
                  + "Content-Length: 999999999\r\n\r\n{");
      assertThat(answer.status()).isEqualTo(413);
    }
    assertThat(served.refused(Kind.TOO_LARGE)).isEqualTo(3);
  }

  /** RFC 6455: Javalin looks for such before anything else. */
  @Test
  void anUpgradeToAWebSocketLeadsNowhere() {
    Answer answer =
        RawHttp.send(
            served.httpPort(),
            "GET /api/range HTTP/1.1\r\nHost: evil.example\r\nConnection: Upgrade, close\r\n"
                + "Upgrade: websocket\r\nSec-WebSocket-Version: 13\r\n"
                + "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n\r\n");
    assertThat(answer.status()).as("%s", answer).isEqualTo(404);
    assertThat(answer.json().path("detail").asText()).isEqualTo("There is nothing there.");
  }

  /** What they are for: OWASP Secure Headers Project, from memory. */
  @Test
  void everyAnswerTellsTheBrowserWhatNotToDo() {
    for (String path : new String[] {"/", "/range.js", "/enter", "/api/range", "/nothing"}) {
      Answer answer =
          RawHttp.ask(served.httpPort(), "", "GET " + path + " HTTP/1.1", "Host: localhost");
      assertThat(answer.header("Content-Security-Policy").orElse(""))
          .contains("default-src 'none'", "frame-ancestors 'none'", "base-uri 'none'")
          .doesNotContain("unsafe", "*");
      assertThat(answer.header("X-Content-Type-Options")).hasValue("nosniff");
      assertThat(answer.header("X-Frame-Options")).hasValue("DENY");
      assertThat(answer.header("Referrer-Policy")).hasValue("no-referrer");
      assertThat(answer.header("Cross-Origin-Opener-Policy")).hasValue("same-origin");
      assertThat(answer.header("Cross-Origin-Resource-Policy")).hasValue("same-origin");
      assertThat(answer.header("Permissions-Policy").orElse(""))
          .contains("screen-wake-lock=(self)", "camera=()", "microphone=()", "geolocation=()");
      // RFC 6797, 7.2: never without TLS
      assertThat(answer.header("Strict-Transport-Security")).isEmpty();
      assertThat(answer.header("Server")).isEmpty();
      assertThat(answer.header("X-Powered-By")).isEmpty();
      assertThat(answer.header("Access-Control-Allow-Origin")).isEmpty();
      assertThat(answer.header("Set-Cookie")).isEmpty();
    }
  }
}
