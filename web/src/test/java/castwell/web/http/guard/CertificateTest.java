package castwell.web.http.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.publish.broker.Secret;
import castwell.web.MadeCertificate;
import castwell.web.settings.HttpSettings.CertificateFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Certificates of every usual kind are taken, and what can't be is said in a sentence. */
@Tag("slow")
class CertificateTest {
  @TempDir static Path made;

  @BeforeAll
  static void makeCertificates() throws Exception {
    for (String algorithm : new String[] {"EC", "RSA", "Ed25519"}) {
      MadeCertificate.of(made, algorithm);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"EC", "RSA", "Ed25519"})
  void itIsTakenAsPemAndAsPkcs12(String algorithm) {
    MadeCertificate certificate = new MadeCertificate(made, algorithm);
    CertificateFiles pem =
        new CertificateFiles(
            certificate.certificate(), Optional.of(certificate.key()), new Secret(""));
    CertificateFiles pkcs12 =
        new CertificateFiles(
            certificate.pkcs12(), Optional.empty(), new Secret(MadeCertificate.PASSWORD));
    assertThat(ServerTls.of(pem, Clock.systemUTC()).getKeyStore()).isNotNull();
    assertThat(ServerTls.of(pkcs12, Clock.systemUTC()).getKeyStore()).isNotNull();
  }

  /** As OpenSSL puts both into one file, with text that says whose they are. */
  @Test
  void theKeyMayStandBetweenOtherThings() throws IOException {
    MadeCertificate certificate = new MadeCertificate(made, "EC");
    Path both =
        Files.writeString(
            made.resolve("both.pem"),
            "subject=CN = range\n"
                + Files.readString(certificate.certificate())
                + Files.readString(certificate.key()));
    CertificateFiles pem =
        new CertificateFiles(certificate.certificate(), Optional.of(both), new Secret(""));
    assertThat(ServerTls.of(pem, Clock.systemUTC()).getKeyStore()).isNotNull();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "nothing.pem     | EC-key.pem      |       | there is no such file",
        "EC.pem          | nothing.pem     |       | there is no such file",
        "EC.pem          | EC.pem          |       | openssl pkcs8 -topk8",
        "EC-key.pem      | EC-key.pem      |       | BEGIN CERTIFICATE",
        "EC.pem          | RSA-key.pem     |       | isn't that of the certificate",
        "EC.pem          | cut-key.pem     |       | was cut off",
        "EC.pem          | old-key.pem     |       | openssl pkcs8 -topk8",
        "garbage         | EC-key.pem      |       | can't be read as PEM",
        "empty           | EC-key.pem      |       | is empty",
        "EC.p12          | ''              | wrong | certificate_password",
        "garbage         | ''              | x     | PKCS#12",
        "EC.pem          | ''              |       | certificate_key",
        "nothing.p12     | ''              | x     | there is no such file"
      })
  void whatCantBeServedIsSaidInOneSentence(
      String certificate, String key, String password, String told) throws Exception {
    Files.writeString(made.resolve("garbage"), "no certificate");
    Files.writeString(made.resolve("empty"), "");
    String whole = Files.readString(made.resolve("EC-key.pem"));
    Files.writeString(made.resolve("cut-key.pem"), whole.replaceFirst("\n....", "\n"));
    Files.writeString(made.resolve("old-key.pem"), whole.replace("PRIVATE", "RSA PRIVATE"));
    CertificateFiles files =
        new CertificateFiles(
            made.resolve(certificate),
            Optional.of(key).filter(file -> !file.isEmpty()).map(made::resolve),
            new Secret(Optional.ofNullable(password).orElse("")));
    assertThatThrownBy(() -> ServerTls.of(files, Clock.systemUTC()))
        .isInstanceOf(CannotServe.class)
        .hasMessageMatching("[^\\n]{20,400}\\.")
        .hasMessageContaining(told)
        .hasMessageContaining(made.toString());
  }
}
