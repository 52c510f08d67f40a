package castwell.capture.publish;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.publish.broker.BrokerConnection;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.BrokerUnavailable;
import castwell.capture.publish.broker.Message;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** TLS as mosquitto speaks it, with certificates as OpenSSL makes them. */
@Tag("broker")
@Timeout(300)
class BrokerTlsTest {
  private static final String EC = "ec -pkeyopt ec_paramgen_curve:P-256";

  @TempDir Path folder;

  @BeforeEach
  void makeCertificates() throws IOException {
    authority("authority");
    authority("stranger");
    signed("broker", "authority", EC, "IP:127.0.0.1");
    signed("range", "authority", EC, "DNS:range.example");
  }

  private Path file(String name) {
    return folder.resolve(name);
  }

  private void authority(String name) {
    openssl(
        "req -x509 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -days 2 -subj /CN=%s"
            + " -keyout %s -out %s",
        name, file(name + ".key"), file(name + ".pem"));
  }

  private void signed(String name, String by, String kind, String called) throws IOException {
    Path extensions = file("extensions");
    Files.writeString(extensions, "subjectAltName = " + called + "\n");
    openssl(
        "req -newkey %s -nodes -subj /CN=%s -keyout %s -out %s",
        kind, name, file(name + ".key"), file(name + ".csr"));
    openssl(
        "x509 -req -in %s -CA %s -CAkey %s -CAcreateserial -days 2 -extfile %s -out %s",
        file(name + ".csr"), file(by + ".pem"), file(by + ".key"), extensions, file(name + ".pem"));
  }

  private static void openssl(String arguments, Object... values) {
    try {
      Process process =
          new ProcessBuilder(("openssl " + arguments.formatted(values)).split(" "))
              .redirectErrorStream(true)
              .start();
      String said = new String(process.getInputStream().readAllBytes(), UTF_8);
      assertThat(process.waitFor()).as(said).isZero();
    } catch (IOException | InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private Mosquitto mosquitto() {
    return Mosquitto.start(
        file("mosquitto"),
        "allow_anonymous true",
        "cafile " + file("authority.pem"),
        "certfile " + file("broker.pem"),
        "keyfile " + file("broker.key"),
        "require_certificate true");
  }

  private BrokerSettings settings(Mosquitto mosquitto, String authority, Optional<String> own) {
    return new BrokerSettings(
        "mqtts://127.0.0.1:" + mosquitto.port(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(file(authority).toString()),
        own.map(name -> file(name + ".pem").toString()),
        own.map(name -> file(name + ".key").toString()));
  }

  private static BrokerConnection connect(BrokerSettings settings) throws BrokerUnavailable {
    return BrokerConnection.open(settings.broker(), "a", Optional.empty(), message -> {}, () -> {});
  }

  @ParameterizedTest
  @ValueSource(strings = {EC, "rsa:2048", "ed25519"})
  void ownCertificateAndTheirAuthority(String kind) throws Exception {
    signed("range", "authority", kind, "DNS:range.example");
    try (Mosquitto mosquitto = mosquitto();
        BrokerConnection connection =
            connect(settings(mosquitto, "authority.pem", Optional.of("range")))) {
      connection.send(Message.once("castwell/x", "y")).await();
      assertThat(connection.isOpen()).isTrue();
    }
  }

  /** As OpenSSL puts both into one file, with text that says whose they are. */
  @Test
  void theKeyMayStandBetweenOtherThings() throws Exception {
    String key = Files.readString(file("range.key"));
    Files.writeString(
        file("range.key"), "subject=CN = range\n" + Files.readString(file("range.pem")) + key);
    try (Mosquitto mosquitto = mosquitto();
        BrokerConnection connection =
            connect(settings(mosquitto, "authority.pem", Optional.of("range")))) {
      assertThat(connection.isOpen()).isTrue();
    }
  }

  @Test
  void withoutACertificateOfOurOwnTheBrokerEndsIt() {
    try (Mosquitto mosquitto = mosquitto()) {
      BrokerSettings settings = settings(mosquitto, "authority.pem", Optional.empty());
      assertThatThrownBy(() -> connect(settings))
          .isInstanceOf(BrokerUnavailable.class)
          .hasMessageStartingWith("broker.unavailable|" + settings.url());
    }
  }

  @Test
  void aBrokerThatAStrangerVouchesForIsNotTrusted() throws IOException {
    try (Mosquitto mosquitto = mosquitto()) {
      BrokerSettings settings = settings(mosquitto, "stranger.pem", Optional.of("range"));
      assertThatThrownBy(() -> connect(settings))
          .isInstanceOf(BrokerUnavailable.class)
          .hasMessageContaining("unable to find valid certification path");
    }
  }

  /** RFC 2818, 3.1: the name must be that of the certificate. */
  @Test
  void aBrokerOfAnotherNameIsNotTrusted() throws IOException {
    signed("broker", "authority", EC, "DNS:elsewhere.example");
    try (Mosquitto mosquitto = mosquitto()) {
      BrokerSettings settings = settings(mosquitto, "authority.pem", Optional.of("range"));
      assertThatThrownBy(() -> connect(settings))
          .isInstanceOf(BrokerUnavailable.class)
          .hasMessageContaining("No subject alternative names matching IP address 127.0.0.1");
    }
  }

  @Test
  void filesThatCantBeReadAreNamedInOneSentence() throws IOException {
    Files.write(file("range.key"), List.of("no key"));
    try (Mosquitto mosquitto = mosquitto()) {
      assertThatThrownBy(() -> connect(settings(mosquitto, "authority.pem", Optional.of("range"))))
          .isInstanceOf(BrokerUnavailable.class)
          .hasMessageContaining("range.key holds no unencrypted PKCS#8 key");
      assertThatThrownBy(() -> connect(settings(mosquitto, "nowhere.pem", Optional.empty())))
          .isInstanceOf(BrokerUnavailable.class)
          .hasMessageContaining("nowhere.pem");
      assertThatThrownBy(() -> connect(settings(mosquitto, "range.key", Optional.empty())))
          .isInstanceOf(BrokerUnavailable.class)
          .hasMessageContaining("range.key");
    }
  }
}
