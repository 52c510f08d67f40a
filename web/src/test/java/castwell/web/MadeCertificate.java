package castwell.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.Base64;

/** A certificate for localhost as people have them, made by the JDK's keytool. */
public record MadeCertificate(Path folder, String name) {
  public static final String PASSWORD = "open sesame";

  private static final String ALIAS = "range";

  /**
   * @param algorithm keytool's name of it; the files are named after it
   */
  public static MadeCertificate of(Path folder, String algorithm)
      throws IOException, InterruptedException, GeneralSecurityException {
    MadeCertificate made = new MadeCertificate(folder, algorithm);
    Process keytool =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
                "-genkeypair",
                "-alias",
                ALIAS,
                "-keyalg",
                algorithm,
                "-dname",
                "CN=localhost",
                "-ext",
                "SAN=dns:localhost,ip:127.0.0.1",
                "-storetype",
                "PKCS12",
                "-storepass",
                PASSWORD,
                "-keystore",
                made.pkcs12().toString())
            .inheritIO()
            .start();
    if (keytool.waitFor() != 0) {
      throw new IOException("keytool failed");
    }
    KeyStore store = made.opened();
    byte[] key = store.getKey(ALIAS, PASSWORD.toCharArray()).getEncoded();
    write(made.key(), "PRIVATE KEY", key);
    write(made.certificate(), "CERTIFICATE", store.getCertificate(ALIAS).getEncoded());
    return made;
  }

  /** RFC 7468. */
  private static void write(Path file, String label, byte[] der) throws IOException {
    String body =
        Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII)).encodeToString(der);
    Files.writeString(
        file, "-----BEGIN %s-----\n%s\n-----END %s-----\n".formatted(label, body, label));
  }

  public Path pkcs12() {
    return folder.resolve(name + ".p12");
  }

  public Path certificate() {
    return folder.resolve(name + ".pem");
  }

  public Path key() {
    return folder.resolve(name + "-key.pem");
  }

  /** Holds it, and nothing else to trust. */
  KeyStore trusted() throws IOException, GeneralSecurityException {
    KeyStore trusted = KeyStore.getInstance("PKCS12");
    trusted.load(null, null);
    trusted.setCertificateEntry(ALIAS, opened().getCertificate(ALIAS));
    return trusted;
  }

  private KeyStore opened() throws IOException, GeneralSecurityException {
    return KeyStore.getInstance(pkcs12().toFile(), PASSWORD.toCharArray());
  }
}
