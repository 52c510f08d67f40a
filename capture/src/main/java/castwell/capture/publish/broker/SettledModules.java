package castwell.capture.publish.broker;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;
import org.eclipse.paho.mqttv5.client.internal.NetworkModule;
import org.eclipse.paho.mqttv5.client.internal.SSLNetworkModuleFactory;
import org.eclipse.paho.mqttv5.client.internal.TCPNetworkModuleFactory;
import org.eclipse.paho.mqttv5.client.spi.NetworkModuleFactory;
import org.eclipse.paho.mqttv5.common.MqttException;

/**
 * The library's own sockets, with one change: a connection that is closed before it sent anything
 * reports that a second late. The library waits in a loop until its reader thread has begun. Where
 * the other side closes at once, as a proxy before a dead broker does, the reader has ended by
 * then, and each attempt would leave a thread behind. The library finds this class through
 * META-INF/services.
 */
public final class SettledModules implements NetworkModuleFactory {
  static final String PLAIN = "mqtt";
  static final String ENCRYPTED = "mqtts";

  private static final long SETTLED_NANOS = TimeUnit.SECONDS.toNanos(1);

  @Override
  public Set<String> getSupportedUriSchemes() {
    return Set.of(PLAIN, ENCRYPTED);
  }

  @Override
  public void validateURI(URI uri) {
    // The broker has closed it already.
  }

  @Override
  public NetworkModule createNetworkModule(URI uri, MqttConnectionOptions options, String clientId)
      throws MqttException {
    String address = "://" + uri.getHost() + ":" + uri.getPort();
    return new Settled(
        uri.getScheme().equals(ENCRYPTED)
            ? new SSLNetworkModuleFactory()
                .createNetworkModule(URI.create("ssl" + address), options, clientId)
            : new TCPNetworkModuleFactory()
                .createNetworkModule(URI.create("tcp" + address), options, clientId));
  }

  private record Settled(NetworkModule module) implements NetworkModule {
    @Override
    public void start() throws IOException, MqttException {
      module.start();
    }

    @Override
    public InputStream getInputStream() throws IOException {
      return new SettledStream(module.getInputStream());
    }

    @Override
    public OutputStream getOutputStream() throws IOException {
      return module.getOutputStream();
    }

    @Override
    public void stop() throws IOException {
      module.stop();
    }

    @Override
    public String getServerURI() {
      return module.getServerURI();
    }
  }

  private static final class SettledStream extends FilterInputStream {
    private boolean settled;

    SettledStream(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
      int got = -1;
      try {
        got = super.read(buffer, offset, length);
        return got;
      } finally {
        if (!settled && got < 0) {
          LockSupport.parkNanos(SETTLED_NANOS);
        }
        settled = true;
      }
    }
  }
}
