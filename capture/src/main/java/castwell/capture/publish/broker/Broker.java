package castwell.capture.publish.broker;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * Where a broker is, and how to log in there.
 *
 * @param url mqtt://host[:1883], or mqtts://host[:8883] for TLS
 * @param authority certificates (PEM) to trust instead of the system's
 * @param patience how long to wait for an answer
 */
public record Broker(
    URI url,
    Optional<Credentials> credentials,
    Optional<Path> authority,
    Optional<ClientCertificate> certificate,
    Duration patience) {

  public static final Duration PATIENCE = Duration.ofSeconds(3);

  /** A user name and its password. Neither may ever be logged. */
  public record Credentials(String user, String password) {
    @Override
    public String toString() {
      return user;
    }
  }

  /** The client's certificate and its key (unencrypted PKCS#8), both PEM. */
  public record ClientCertificate(Path certificate, Path key) {}

  /** A broker that takes connections without a login. */
  public static Broker open(URI url) {
    return new Broker(url, Optional.empty(), Optional.empty(), Optional.empty(), PATIENCE);
  }

  boolean isEncrypted() {
    return url.getScheme().equals(SettledModules.ENCRYPTED);
  }

  /** The address in the form that the client library takes. */
  public String serverUri() {
    int port = url.getPort() >= 0 ? url.getPort() : isEncrypted() ? 8883 : 1883;
    return url.getScheme() + "://" + url.getHost() + ":" + port;
  }

  /**
   * Reads a broker's address.
   *
   * @throws IllegalArgumentException with one sentence on what is wrong
   */
  public static URI url(String text) {
    try {
      URI url = URI.create(text);
      String scheme = url.getScheme();
      boolean mqtt = SettledModules.PLAIN.equals(scheme) || SettledModules.ENCRYPTED.equals(scheme);
      boolean bare = url.getUserInfo() == null && url.getRawQuery() == null;
      boolean rootOnly = url.getRawPath() == null || url.getRawPath().matches("/?");
      if (mqtt && bare && rootOnly && url.getHost() != null) {
        return url;
      }
    } catch (IllegalArgumentException e) {
      // The exception below says it.
    }
    throw new IllegalArgumentException(
        "a broker's address is mqtt://HOST[:PORT], or mqtts://HOST[:PORT] for TLS, with user and password apart from it");
  }
}
