package castwell.web.http.guard;

import castwell.web.access.Origin;
import castwell.web.http.guard.Refusals.Kind;
import castwell.web.settings.HttpSettings.HttpLimits;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.nio.channels.SelectableChannel;
import java.nio.channels.SocketChannel;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.io.SelectorManager;
import org.eclipse.jetty.io.ssl.SslConnection;
import org.eclipse.jetty.server.ConnectionMetaData;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.component.AbstractLifeCycle;
import org.slf4j.LoggerFactory;

/**
 * Connections bounded in number, and closed when a whole request doesn't arrive on one for long:
 * whoever sends a byte now and then keeps Jetty's idle timeout from ever ending it.
 */
final class Connections extends Handler.Wrapper implements SelectorManager.AcceptListener {
  private static final long LOOK_AGAIN_MILLIS = 500;

  private final Seats seats;
  private final long patienceNanos;
  private final LongSupplier nanos;
  private final Refusals refusals;
  private final Map<SelectableChannel, String> seated = new ConcurrentHashMap<>();

  /** Connections on which no whole request has come since the last one, by where they come from. */
  private final Map<SocketAddress, Waiting> waiting = new ConcurrentHashMap<>();

  /**
   * @param since when the last request was done, or the connection opened
   * @param bytes how many had come by then
   */
  private record Waiting(long since, long bytes) {}

  Connections(HttpLimits limits, LongSupplier nanos, Refusals refusals) {
    this.seats = new Seats(limits.connections(), limits.connectionsPerAddress());
    this.patienceNanos = Math.round(limits.slowRequestS() * TimeUnit.SECONDS.toNanos(1));
    this.nanos = nanos;
    this.refusals = refusals;
  }

  void watch(ServerConnector connector) {
    connector.addBean(this, false); // a bean that listens is told of its connections
    connector.addBean(new Sweeping(connector));
  }

  /** Runs while the connector does. */
  private final class Sweeping extends AbstractLifeCycle implements Runnable {
    private final ServerConnector connector;

    Sweeping(ServerConnector connector) {
      this.connector = connector;
    }

    @Override
    protected void doStart() {
      again();
    }

    private void again() {
      connector.getScheduler().schedule(this, LOOK_AGAIN_MILLIS, TimeUnit.MILLISECONDS);
    }

    @Override
    public void run() {
      try {
        closeTheSlow(connector);
      } finally {
        if (isStarted()) {
          again();
        }
      }
    }
  }

  @Override
  public void onAccepting(SelectableChannel channel) {
    try {
      SocketAddress from = ((SocketChannel) channel).getRemoteAddress();
      String address = neighbourhood(from);
      if (seats.take(address) == Seats.Outcome.TAKEN) {
        seated.put(channel, address);
        waiting.put(from, new Waiting(nanos.getAsLong(), 0));
      } else {
        refusals.count(Kind.TOO_MANY_CONNECTIONS);
        channel.close();
      }
    } catch (IOException e) {
      LoggerFactory.getLogger(Connections.class).debug("gone before it was accepted", e);
    }
  }

  @Override
  public void onAcceptFailed(SelectableChannel channel, Throwable cause) {
    onClosed(channel);
  }

  @Override
  public void onClosed(SelectableChannel channel) {
    String address = seated.remove(channel);
    if (address != null) {
      seats.leave(address);
    }
  }

  private static String neighbourhood(SocketAddress address) {
    return address instanceof InetSocketAddress internet
        ? Origin.neighbourhood(internet.getAddress().getHostAddress())
        : String.valueOf(address);
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    ConnectionMetaData from = request.getConnectionMetaData();
    SocketAddress address = from.getRemoteSocketAddress();
    if (address != null) { // or it is closed already
      waiting.remove(address);
      Request.addCompletionListener(
          request,
          failure ->
              waiting.put(
                  address, new Waiting(nanos.getAsLong(), from.getConnection().getBytesIn())));
    }
    return super.handle(request, response, callback);
  }

  /** What is waited for in vain is forgotten, whether or not its connection is still there. */
  private void closeTheSlow(ServerConnector connector) {
    long now = nanos.getAsLong();
    Map<SocketAddress, Waiting> over = new HashMap<>(waiting);
    over.values().removeIf(since -> now - since.since() <= patienceNanos);
    over.entrySet().removeIf(since -> !waiting.remove(since.getKey(), since.getValue()));
    for (EndPoint connection : connector.getConnectedEndPoints()) {
      Waiting since = over.get(connection.getRemoteSocketAddress());
      if (since != null) {
        if (bytesIn(connection) > since.bytes()) { // whoever sent nothing was merely idle
          refusals.count(Kind.TOO_SLOW);
        }
        connection.close();
      }
    }
  }

  private static long bytesIn(EndPoint endPoint) {
    Connection connection = endPoint.getConnection();
    if (connection instanceof SslConnection tls) {
      connection = tls.getSslEndPoint().getConnection();
    }
    return connection == null ? 0 : connection.getBytesIn();
  }
}
