package castwell.web.http.guard;

import castwell.web.settings.HttpSettings;
import io.javalin.config.JavalinConfig;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.eclipse.jetty.http.HttpCompliance;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.LowResourceMonitor;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.MinimumDataRateHandler;
import org.eclipse.jetty.server.handler.ThreadLimitHandler;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** Jetty, bounded: threads, connections, and how slowly anything may come. */
public final class JettySetUp {
  private static final int MOST_THREADS = 48;
  private static final int MOST_THREADS_OF_ONE = 16;
  private static final int LARGEST_HEADER = 8 * 1024;
  private static final int BACKLOG = 256;

  /** Of a connection: by itself the kernel would keep megabytes for whoever never reads. */
  private static final int SEND_BUFFER = 64 * 1024;

  private static final long SLOWEST_BODY = 256; // bytes a second, once it began to come

  private final HttpSettings settings;
  private final Clock clock;
  private final LongSupplier nanos;
  private final Refusals refusals;

  public JettySetUp(HttpSettings settings, Clock clock, LongSupplier nanos, Refusals refusals) {
    this.settings = settings;
    this.clock = clock;
    this.nanos = nanos;
    this.refusals = refusals;
  }

  public void apply(JavalinConfig config) {
    Optional<SslContextFactory.Server> tls =
        settings.certificate().map(files -> ServerTls.of(files, clock));
    Connections connections = new Connections(settings.limits(), nanos, refusals);
    QueuedThreadPool threads = new QueuedThreadPool(MOST_THREADS);
    threads.setName("http");
    config.jetty.threadPool = threads;
    config.jetty.modifyServer(server -> guard(server, connections));
    config.jetty.modifyServletContextHandler(
        context -> context.setErrorHandler(new PlainErrors(refusals)));
    config.jetty.modifyHttpConfiguration(JettySetUp::strict);
    config.jetty.addConnector(
        (server, http) -> {
          ServerConnector connector = connector(server, http, tls);
          connector.setHost(config.jetty.host);
          connector.setPort(config.jetty.port);
          connections.watch(connector);
          return connector;
        });
  }

  private void guard(Server server, Connections connections) {
    // It would close everyone's live view when threads are short: there are other bounds here.
    server.getBeans(LowResourceMonitor.class).forEach(server::removeBean);
    ThreadLimitHandler threadsOfOne = new ThreadLimitHandler();
    threadsOfOne.setThreadLimit(MOST_THREADS_OF_ONE);
    server.insertHandler(threadsOfOne);
    server.insertHandler(new MinimumDataRateHandler(SLOWEST_BODY, 0));
    server.insertHandler(connections);
    server.setErrorHandler(new PlainErrors(refusals));
  }

  /** RFC 9112 to the letter: two readings of one request are how one is smuggled past a proxy. */
  private static void strict(HttpConfiguration http) {
    http.setHttpCompliance(HttpCompliance.STRICT);
    http.setRequestHeaderSize(LARGEST_HEADER);
    http.setSendServerVersion(false);
    http.setSendXPoweredBy(false);
  }

  private ServerConnector connector(
      Server server, HttpConfiguration http, Optional<SslContextFactory.Server> tls) {
    if (tls.isPresent()) {
      // By whichever name it is reached, the browser compares it with the certificate's itself.
      http.addCustomizer(new SecureRequestCustomizer(false));
    }
    HttpConnectionFactory plain = new HttpConnectionFactory(http);
    ServerConnector connector =
        tls.map(context -> new ServerConnector(server, context, plain))
            .orElseGet(() -> new ServerConnector(server, plain));
    connector.setAcceptQueueSize(BACKLOG);
    connector.setAcceptedSendBufferSize(SEND_BUFFER);
    connector.setIdleTimeout(TimeUnit.SECONDS.toMillis(30));
    return connector;
  }
}
