package castwell.capture.publish.broker;

import castwell.analysis.wording.Phrase;
import castwell.capture.tls.Pem;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.InvalidKeyException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.util.List;
import javax.net.ssl.KeyManager;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;

/** Sets up TLS to a broker from PEM files (RFC 7468). */
final class BrokerTls {
  private static final char[] NO_PASSWORD = new char[0];

  private BrokerTls() {}

  static SSLSocketFactory sockets(Broker broker) throws BrokerUnavailable {
    try {
      TrustManager[] trusted = null; // A null stands for the authorities that the system trusts.
      if (broker.authority().isPresent()) {
        trusted = trusted(broker.authority().get());
      }
      KeyManager[] own = null;
      if (broker.certificate().isPresent()) {
        own = own(broker.certificate().get());
      }
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(own, trusted, null);
      return context.getSocketFactory();
    } catch (IOException | GeneralSecurityException e) {
      throw new BrokerUnavailable(Phrase.of("broker.certificates", broker.url(), why(e)), e);
    }
  }

  private static Phrase why(Exception e) {
    return e instanceof NoSuchFileException missing
        ? Phrase.of("broker.no_file", missing.getFile())
        : Phrase.asIs(String.valueOf(e.getMessage()));
  }

  private static TrustManager[] trusted(Path file) throws IOException, GeneralSecurityException {
    KeyStore store = empty();
    for (Certificate certificate : certificates(file)) {
      store.setCertificateEntry("authority-" + store.size(), certificate);
    }
    var factory = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    factory.init(store);
    return factory.getTrustManagers();
  }

  private static KeyManager[] own(Broker.ClientCertificate files)
      throws IOException, GeneralSecurityException {
    KeyStore store = empty();
    store.setKeyEntry(
        "own",
        key(files.key()),
        NO_PASSWORD,
        certificates(files.certificate()).toArray(Certificate[]::new));
    var factory = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
    factory.init(store, NO_PASSWORD);
    return factory.getKeyManagers();
  }

  private static KeyStore empty() throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    return store;
  }

  private static List<Certificate> certificates(Path file)
      throws IOException, GeneralSecurityException {
    try {
      return Pem.certificates(file);
    } catch (CertificateException e) {
      throw new GeneralSecurityException(file + " holds no certificate in PEM", e);
    }
  }

  private static PrivateKey key(Path file) throws IOException, GeneralSecurityException {
    try {
      return Pem.key(file).orElseThrow(InvalidKeyException::new);
    } catch (InvalidKeyException e) {
      throw new GeneralSecurityException(
          file + " holds no unencrypted PKCS#8 key of kind RSA, EC, Ed25519", e);
    }
  }
}
