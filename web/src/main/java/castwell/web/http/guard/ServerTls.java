package castwell.web.http.guard;

import castwell.web.settings.HttpSettings.CertificateFiles;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.util.Collections;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.slf4j.LoggerFactory;

/** TLS with a given certificate and its key, as PEM or PKCS#12 (RFC 7292). */
final class ServerTls {
  private static final String ALIAS = "castwell";
  private static final String[] VERSIONS = {"TLSv1.3", "TLSv1.2"}; // RFC 8996 ends those before

  private ServerTls() {}

  /**
   * @throws CannotServe when it can't be used
   */
  static SslContextFactory.Server of(CertificateFiles files, Clock clock) {
    KeyStore store = files.key().isPresent() ? pem(files) : pkcs12(files);
    SslContextFactory.Server context = new SslContextFactory.Server();
    context.setKeyStore(store);
    context.setKeyStorePassword(files.password().text());
    context.setIncludeProtocols(VERSIONS);
    warnIfOver(files, store, clock);
    return context;
  }

  private static KeyStore pkcs12(CertificateFiles files) {
    try (InputStream in = Files.newInputStream(files.certificate())) {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(in, files.password().text().toCharArray());
      if (Collections.list(store.aliases()).stream().anyMatch(alias -> holdsKey(store, alias))) {
        return store;
      }
      throw new CannotServe(
          "The certificate %s holds no private key: put both into the PKCS#12 file."
              .formatted(files.certificate()));
    } catch (GeneralSecurityException | IOException e) {
      throw new CannotServe(
          "The certificate %s can't be read as PKCS#12 with certificate_password (%s): say the right one, or name a PEM certificate's key as certificate_key."
              .formatted(files.certificate(), ServerPem.reason(e)),
          e);
    }
  }

  private static boolean holdsKey(KeyStore store, String alias) {
    try {
      return store.isKeyEntry(alias);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e); // it was loaded
    }
  }

  private static KeyStore pem(CertificateFiles files) {
    Certificate[] chain = ServerPem.certificates(files.certificate());
    PrivateKey key = ServerPem.key(files.key().orElseThrow());
    try {
      if (!belongTogether(key, chain[0])) {
        throw new CannotServe(
            "The key %s isn't that of the certificate %s: name the two that belong together."
                .formatted(files.key().orElseThrow(), files.certificate()));
      }
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(null, null);
      store.setKeyEntry(ALIAS, key, files.password().text().toCharArray(), chain);
      return store;
    } catch (GeneralSecurityException | IOException e) {
      throw new CannotServe(
          "The certificate %s can't be used (%s): take one with an RSA, EC or Ed25519 key."
              .formatted(files.certificate(), ServerPem.reason(e)),
          e);
    }
  }

  /** What the one signs, the other confirms. */
  private static boolean belongTogether(PrivateKey key, Certificate certificate)
      throws GeneralSecurityException {
    if (!key.getAlgorithm().equals(certificate.getPublicKey().getAlgorithm())) {
      return false;
    }
    Signature signature =
        Signature.getInstance(
            switch (key.getAlgorithm()) {
              case "EC" -> "SHA256withECDSA";
              case "RSA" -> "SHA256withRSA";
              default -> key.getAlgorithm();
            });
    signature.initSign(key);
    signature.update(new byte[32]);
    byte[] signed = signature.sign();
    signature.initVerify(certificate.getPublicKey());
    signature.update(new byte[32]);
    return signature.verify(signed);
  }

  private static void warnIfOver(CertificateFiles files, KeyStore store, Clock clock) {
    try {
      for (String alias : Collections.list(store.aliases())) {
        if (store.getCertificate(alias) instanceof X509Certificate certificate
            && certificate.getNotAfter().toInstant().isBefore(clock.instant())) {
          LoggerFactory.getLogger(ServerTls.class)
              .warn(
                  "The certificate {} was good until {}: browsers will warn of it; get a new one.",
                  files.certificate(),
                  certificate.getNotAfter().toInstant());
        }
      }
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e); // it was loaded
    }
  }
}
