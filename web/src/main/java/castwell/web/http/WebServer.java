package castwell.web.http;

import castwell.capture.clock.OnwardClock;
import castwell.capture.command.Commands;
import castwell.capture.derive.Derivation;
import castwell.capture.health.HealthView;
import castwell.capture.intake.IntakeCommands;
import castwell.capture.store.Store;
import castwell.web.access.Attempts;
import castwell.web.http.api.AdmissionApi;
import castwell.web.http.api.ArrowsApi;
import castwell.web.http.api.BowsApi;
import castwell.web.http.api.BrokerApi;
import castwell.web.http.api.DataApi;
import castwell.web.http.api.GatesApi;
import castwell.web.http.api.HealthApi;
import castwell.web.http.api.ImportApi;
import castwell.web.http.api.MetricsApi;
import castwell.web.http.api.PlansApi;
import castwell.web.http.api.RangeApi;
import castwell.web.http.api.RangeViews;
import castwell.web.http.api.ReportsApi;
import castwell.web.http.api.ShotsApi;
import castwell.web.http.api.Views;
import castwell.web.http.guard.CannotServe;
import castwell.web.http.guard.Gatekeeper;
import castwell.web.http.guard.JettySetUp;
import castwell.web.http.guard.Refusals;
import castwell.web.http.guard.SafeHeaders;
import castwell.web.http.live.LiveApi;
import castwell.web.http.live.LiveFeed;
import castwell.web.http.page.Library;
import castwell.web.http.page.LivePages;
import castwell.web.http.page.OwnFiles;
import castwell.web.http.page.WorkbenchPages;
import castwell.web.http.problem.Problems;
import castwell.web.http.route.Body;
import castwell.web.http.route.Routes;
import castwell.web.metrics.Metrics;
import castwell.web.settings.HttpAddress;
import castwell.web.settings.Version;
import castwell.web.text.Speech;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.util.JavalinLogger;
import java.nio.channels.UnresolvedAddressException;
import java.time.ZoneId;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** The page and its API. */
public final class WebServer implements AutoCloseable {
  private final LiveFeed feed;
  private final Javalin javalin;
  private final HttpAddress address;
  private final Refusals refusals = new Refusals();

  public WebServer(Parts parts) {
    address = parts.address();
    Store store = parts.store();
    Commands commands = parts.commands();
    OnwardClock clock = parts.clock();
    ZoneId zone = parts.settings().zone();
    Views views = new Views(zone);
    feed = new LiveFeed(store, views, clock, parts.nanos());
    parts.announcer().add(feed);
    boolean needsKey = parts.http().needsKey(parts.address());
    JettySetUp jetty = new JettySetUp(parts.http(), clock, parts.nanos(), refusals);
    SafeHeaders headers = new SafeHeaders(needsKey && parts.http().certificate().isPresent());
    Gatekeeper gate =
        new Gatekeeper(
            needsKey,
            parts.http().watchOpen(),
            parts.door(),
            new Attempts(parts.nanos()),
            refusals);
    javalin =
        Javalin.create(
            config -> {
              plain(config);
              Problems.route(config);
              jetty.apply(config);
              config.routes.before(headers::add);
              gate.route(config);
              ImportApi.refuse(config);
              api(parts, gate, views).register(config);
              new Library().route(config);
              new LivePages().route(config);
              new WorkbenchPages(
                      store, clock, zone, commands, parts.capture(), gate, parts.rehearsal())
                  .route(config);
              new OwnFiles().route(config);
            });
  }

  private Routes api(Parts parts, Gatekeeper gate, Views views) {
    Store store = parts.store();
    Commands commands = parts.commands();
    OnwardClock clock = parts.clock();
    ZoneId zone = parts.settings().zone();
    RangeViews range = new RangeViews(views, parts.rehearsal());
    return Routes.of(
        Version.TEXT,
        Stream.of(
            new AdmissionApi(gate, parts.door()).routes(),
            new RangeApi(store, commands, parts.capture(), views, range, clock).routes(),
            new BowsApi(store, commands, views, clock, zone).routes(),
            new ArrowsApi(store, commands, views).routes(),
            new ShotsApi(store, commands, parts.capture(), new Derivation(parts.settings()), views)
                .routes(),
            new GatesApi(store, commands, clock, zone).routes(),
            new ImportApi(new IntakeCommands(commands, parts.settings(), clock)).routes(),
            new DataApi(store, clock, zone).routes(),
            new PlansApi(store, commands.plans(), parts.capture(), zone).routes(),
            new ReportsApi(store, zone).routes(),
            new BrokerApi(parts.broker()).routes(),
            new HealthApi(new HealthView(parts.checkup(), Speech.TRADE)).routes(),
            new MetricsApi(new Metrics(parts.checkup(), Version.TEXT, refusals::all)).routes(),
            new LiveApi(store, feed, parts.http().limits(), refusals).routes()));
  }

  private static void plain(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.http.maxRequestSize = Body.LARGEST;
    config.jsonMapper(new ShapeWriter());
  }

  /**
   * @param died called with what ended the live feed, should anything
   * @return where it is served, the port that was free where 0 was asked for
   */
  public HttpAddress start(Consumer<Throwable> died) {
    JavalinLogger.enabled = false; // why it doesn't start is told below, once
    try {
      javalin.start(address.host(), address.port());
    } catch (RuntimeException e) {
      throw new CannotServe(
          "The page can't be served at %s (%s): end what uses it, or name another with --http."
              .formatted(address, reason(e)),
          e);
    } finally {
      JavalinLogger.enabled = true;
    }
    feed.start(died);
    return new HttpAddress(address.host(), javalin.port());
  }

  private static String reason(Throwable e) {
    Throwable root = e;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    return root instanceof UnresolvedAddressException ? "no such host" : root.getMessage();
  }

  /** What was refused since the start. */
  public Refusals refusals() {
    return refusals;
  }

  @Override
  public void close() {
    feed.close();
    javalin.stop();
  }
}
