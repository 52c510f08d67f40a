package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** TLS with certificates as people have them, made by the JDK's keytool. */
@Tag("slow")
@Timeout(300)
class TlsTest {
  @TempDir static Path made;
  private static MadeCertificate certificate;

  @TempDir Path folder;

  @BeforeAll
  static void makeCertificate() throws Exception {
    certificate = MadeCertificate.of(made, "RSA");
  }

  private static String pem() {
    return "certificate = \"%s\"\ncertificate_key = \"%s\""
        .formatted(certificate.certificate(), certificate.key());
  }

  private static String pkcs12() {
    return "certificate = \"%s\"\ncertificate_password = \"%s\""
        .formatted(certificate.pkcs12(), MadeCertificate.PASSWORD);
  }

  private static SSLContext trusting() throws Exception {
    TrustManagerFactory trust =
        TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    trust.init(certificate.trusted());
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, trust.getTrustManagers(), null);
    return context;
  }

  private static URI at(Served served, String path) {
    return URI.create("https://localhost:" + served.httpPort() + path);
  }

  private static HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
    return HttpClient.newBuilder()
        .sslContext(trusting())
        .build()
        .send(request.build(), BodyHandlers.ofString());
  }

  @Test
  void aPemCertificateWithItsKeyIsServed() throws Exception {
    try (Served served = Served.with(folder, pem())) {
      HttpResponse<String> page = send(HttpRequest.newBuilder(at(served, "/")));
      assertThat(page.statusCode()).isEqualTo(200);
      assertThat(page.sslSession().orElseThrow().getProtocol()).isEqualTo("TLSv1.3");
      // This computer's other servers are localhost too, and may have no TLS.
      assertThat(page.headers().firstValue("Strict-Transport-Security")).isEmpty();
    }
  }

  @Test
  void aPkcs12FileIsServedAndTheCookieNeverGoesWithoutTls() throws Exception {
    try (Served served = Served.forOthers(folder, pkcs12())) {
      HttpResponse<String> entered =
          send(
              HttpRequest.newBuilder(at(served, "/api/admission"))
                  .header("Content-Type", "application/json")
                  .POST(BodyPublishers.ofString("{\"key\":\"" + served.key() + "\"}")));
      assertThat(entered.statusCode()).isEqualTo(201);
      assertThat(entered.headers().firstValue("Set-Cookie").orElse(""))
          .contains("Secure", "HttpOnly", "SameSite=Strict");
      // RFC 6797, 6.1
      assertThat(entered.headers().firstValue("Strict-Transport-Security"))
          .hasValue("max-age=31536000");
    }
  }

  /** A ClientHello to the letter, since no client of today sends one. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2}) // TLS 1.0 and 1.1, as the wire numbers them
  void oldVersionsAreRefused(int minor) throws Exception {
    byte[] hello = new byte[4 + 2 + 32 + 1 + 2 + 4 + 2];
    ByteBuffer.wrap(hello)
        .putInt(0x01000000 | (hello.length - 4))
        .put(new byte[] {3, (byte) minor})
        .position(4 + 2 + 32 + 1)
        .putShort((short) 4)
        .put(new byte[] {(byte) 0xC0, 0x13, 0, 0x2F, 1, 0}); // two suites, no compression
    try (Served served = Served.with(folder, pem());
        Socket socket = RawHttp.connect("127.0.0.1", served.httpPort())) {
      socket.getOutputStream().write(new byte[] {22, 3, 1, 0, (byte) hello.length});
      socket.getOutputStream().write(hello);
      // RFC 5246, 7.2: a fatal alert, protocol_version; RFC 8996 says why
      assertThat(socket.getInputStream().readNBytes(7)).startsWith(21, 3).endsWith(0, 2, 2, 70);
    }
  }

  @Test
  void whoSpeaksWithoutTlsIsToldNothingAndDisturbsNobody() throws Exception {
    try (Served served = Served.with(folder, pem())) {
      try (Socket plain = RawHttp.connect("127.0.0.1", served.httpPort())) {
        plain.getOutputStream().write("GET / HTTP/1.1\r\nHost: localhost\r\n\r\n".getBytes());
        assertThat(RawHttp.all(plain.getInputStream())).doesNotContain("html");
      }
      assertThat(send(HttpRequest.newBuilder(at(served, "/"))).statusCode()).isEqualTo(200);
    }
  }

  /** A handshake that never goes on is ended as any request that never comes. */
  @Test
  void aHandshakeThatStallsIsEnded() throws Exception {
    try (Served served = Served.with(folder, pem() + "\nslow_request_s = 1");
        Socket silent = RawHttp.connect("127.0.0.1", served.httpPort())) {
      silent.getOutputStream().write(new byte[] {22, 3, 1}); // a record's beginning
      assertThat(RawHttp.all(silent.getInputStream()).length()).isLessThan(100);
      assertThat(send(HttpRequest.newBuilder(at(served, "/"))).statusCode()).isEqualTo(200);
    }
  }

  @Test
  void atTheCommandLineThatIsExitCodeTwo() throws Exception {
    Path data = Files.createDirectories(folder.resolve("data"));
    Files.writeString(
        data.resolve("castwell.toml"), "[http]\ncertificate = \"c.pem\"\ncertificate_key = \"k\"");
    Program.Outcome outcome =
        Program.run("rehearse", "--data", data.toString(), "--http", "127.0.0.1:0");
    assertThat(outcome.exitCode()).as("%s", outcome).isEqualTo(2);
    assertThat(List.of(outcome.err().split("\n"))).hasSize(1);
    assertThat(outcome.err()).contains(data.resolve("c.pem").toString(), "there is no such file");
  }
}
