package castwell.capture.tls;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.InvalidKeyException;
import java.security.cert.CertificateException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files as OpenSSL writes them. */
@Tag("system")
class PemTest {
  @TempDir Path folder;

  private Path file(String name) {
    return folder.resolve(name);
  }

  private static void openssl(List<Path> files, String... arguments) throws Exception {
    List<String> command = new ArrayList<>(List.of("openssl"));
    Collections.addAll(command, arguments);
    files.forEach(file -> command.add(file.toString()));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
  }

  private void makeKey(String arguments) throws Exception {
    openssl(List.of(file("key")), ("genpkey " + arguments + " -out").split(" "));
  }

  @ParameterizedTest
  @CsvSource({
    "-algorithm RSA -pkeyopt rsa_keygen_bits:2048, RSA",
    "-algorithm EC -pkeyopt ec_paramgen_curve:P-256, EC",
    "-algorithm EC -pkeyopt ec_paramgen_curve:P-521, EC",
    "-algorithm ed25519, EdDSA",
    "-algorithm ed448, EdDSA"
  })
  void everyKindOfKeyIsRead(String made, String algorithm) throws Exception {
    makeKey(made);
    assertThat(Pem.key(file("key")).orElseThrow().getAlgorithm()).isEqualTo(algorithm);
  }

  @Test
  void certificatesOfOneFileAreReadInOrder() throws Exception {
    StringBuilder chain = new StringBuilder();
    for (String name : List.of("range", "authority")) {
      String made =
          "req -x509 -newkey ed25519 -nodes -subj /CN=%s -keyout %s -out"
              .formatted(name, file("key"));
      openssl(List.of(file(name)), made.split(" "));
      chain.append(Files.readString(file(name)));
    }
    Files.writeString(file("chain"), chain);
    assertThat(Pem.certificates(file("chain")))
        .containsExactly(
            Pem.certificates(file("range")).get(0), Pem.certificates(file("authority")).get(0));
  }

  @ParameterizedTest
  @ValueSource(strings = {"pkey -traditional", "pkcs8 -topk8 -passout pass:x"})
  void keysOfOtherFormatsAreNone(String written) throws Exception {
    makeKey("-algorithm EC -pkeyopt ec_paramgen_curve:P-256");
    Path other = file("other");
    openssl(List.of(other), (written + " -in " + file("key") + " -out").split(" "));
    assertThat(Files.readString(other)).contains("PRIVATE KEY");
    assertThat(Pem.key(other)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"-algorithm ed25519", "-algorithm RSA"})
  void aKeyThatWasCutOffIsRefused(String made) throws Exception {
    makeKey(made);
    String whole = Files.readString(file("key"));
    Files.writeString(file("key"), whole.replaceFirst("\n........", "\n"));
    assertThatThrownBy(() -> Pem.key(file("key"))).isInstanceOf(InvalidKeyException.class);
  }

  @Test
  void aKeyOfAnotherKindIsRefused() throws Exception {
    makeKey("-algorithm x25519");
    assertThatThrownBy(() -> Pem.key(file("key"))).isInstanceOf(InvalidKeyException.class);
  }

  @Test
  void whatIsNoCertificateIsTold() throws Exception {
    assertThatThrownBy(() -> Pem.certificates(file("none")))
        .isInstanceOf(NoSuchFileException.class);
    assertThat(Pem.certificates(Files.createFile(file("empty")))).isEmpty();
    assertThatThrownBy(() -> Pem.certificates(Files.writeString(file("text"), "no certificate")))
        .isInstanceOf(CertificateException.class);
  }
}
