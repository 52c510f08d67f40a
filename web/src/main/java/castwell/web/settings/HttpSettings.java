package castwell.web.settings;

import castwell.capture.publish.broker.Secret;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Who may come to the page, and how much.
 *
 * @param watchOpen whether somebody without the key may watch, where changing things needs it
 * @param reachedAt the page's address for others, where a proxy gives it one
 */
public record HttpSettings(
    boolean watchOpen,
    Optional<String> reachedAt,
    Optional<CertificateFiles> certificate,
    HttpLimits limits) {

  /**
   * The files that TLS is served with.
   *
   * @param certificate PEM with the issuers' certificates behind it, or PKCS#12
   * @param key the private key in PEM; empty for PKCS#12
   * @param password the password of PKCS#12
   * @param certificate PEM, the issuer's behind it, or PKCS#12
   * @param key PEM's private key; empty for PKCS#12
   * @param password of PKCS#12
   */
  public record CertificateFiles(Path certificate, Optional<Path> key, Secret password) {}

  /**
   * Limits on what is served at the same time.
   *
   * @param slowRequestS how long a request may take to arrive
   */
  public record HttpLimits(
      int readers,
      int readersPerAddress,
      int connections,
      int connectionsPerAddress,
      double slowRequestS) {}

  static HttpSettings of(SettingsTable table, Path settings) {
    return new HttpSettings(
        table.value("watch", "key", HttpSettings::watchOpen),
        Optional.of(table.value("reached_at", "", HttpSettings::page)).filter(s -> !s.isEmpty()),
        certificate(table, settings),
        new HttpLimits(
            (int) table.number("readers", 1200, 1, 100_000),
            (int) table.number("readers_per_address", 64, 1, 100_000),
            (int) table.number("connections", 2000, 1, 200_000),
            (int) table.number("connections_per_address", 128, 1, 200_000),
            table.number("slow_request_s", 20, 0.1, 600)));
  }

  private static boolean watchOpen(String word) {
    return switch (word) {
      case "open" -> true;
      case "key" -> false;
      default ->
          throw new IllegalArgumentException(
              "watching is \"open\" to all or takes the \"key\", not \"" + word + "\"");
    };
  }

  private static String page(String text) {
    if (!text.isEmpty() && !text.matches("https?://[^\\s/?#@]+/?")) {
      throw new IllegalArgumentException(
          "the page's address for others is such as \"https://range.example/\", not \""
              + text
              + "\"");
    }
    return text.isEmpty() || text.endsWith("/") ? text : text + "/";
  }

  private static Optional<CertificateFiles> certificate(SettingsTable table, Path settings) {
    String certificate = table.value("certificate", "", word -> word);
    String key = table.value("certificate_key", "", word -> word);
    String password = table.value("certificate_password", "", word -> word);
    if (certificate.isEmpty() && !key.isEmpty()) {
      throw table.bad("certificate_key", "it is of no use without its certificate: name that too");
    }
    return Optional.of(certificate)
        .filter(file -> !file.isEmpty())
        .map(
            file ->
                new CertificateFiles(
                    settings.resolveSibling(file),
                    Optional.of(key).filter(f -> !f.isEmpty()).map(settings::resolveSibling),
                    new Secret(password)));
  }

  public HttpSettings withWatchOpen() {
    return new HttpSettings(true, reachedAt, certificate, limits);
  }

  /** Whether anybody but the person at this computer can reach the page, so that it needs a key. */
  public boolean needsKey(HttpAddress address) {
    return !address.isLoopback() || reachedAt.isPresent();
  }
}
