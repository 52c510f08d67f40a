package castwell.capture.publish.broker;

import castwell.analysis.wording.Phrase;
import castwell.capture.publish.broker.Broker.ClientCertificate;
import castwell.capture.publish.broker.Broker.Credentials;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The settings of a broker, as a person wrote them. They are checked when a connection is tried and
 * not before, since a mistake in them must not keep the program from starting.
 */
public record BrokerSettings(
    String url,
    Optional<String> user,
    Optional<Secret> password,
    Optional<String> authority,
    Optional<String> certificate,
    Optional<String> key) {

  /**
   * @throws BrokerUnavailable when the settings can't be those of a broker
   */
  public Broker broker() throws BrokerUnavailable {
    if (user.isPresent() != password.isPresent()) {
      throw bad(Phrase.of("broker.user_alone"));
    }
    if (certificate.isPresent() != key.isPresent()) {
      throw bad(Phrase.of("broker.certificate_alone"));
    }
    try {
      return new Broker(
          Broker.url(url),
          user.map(name -> new Credentials(name, password.orElseThrow().text())),
          authority.map(Path::of),
          certificate.map(file -> new ClientCertificate(Path.of(file), Path.of(key.orElseThrow()))),
          Broker.PATIENCE);
    } catch (IllegalArgumentException e) {
      throw bad(Phrase.asIs(e.getMessage()));
    }
  }

  private static BrokerUnavailable bad(Phrase what) {
    return new BrokerUnavailable(Phrase.of("broker.cant_be", what));
  }
}
