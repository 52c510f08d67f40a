package castwell.web.http.api;

import castwell.web.http.route.Route;
import castwell.web.metrics.Metrics;
import io.javalin.http.Context;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** <code>/metrics</code>, in the format that the reader prefers. */
public final class MetricsApi {
  private final Metrics metrics;

  public MetricsApi(Metrics metrics) {
    this.metrics = metrics;
  }

  public List<Route> routes() {
    return List.of(
        Route.get("/metrics", "How everything is, for a monitoring system")
            .says(
                this::metrics,
                Arrays.stream(Metrics.Format.values())
                    .map(Metrics.Format::contentType)
                    .toArray(String[]::new)));
  }

  private void metrics(Context ctx) {
    Metrics.Format format = Metrics.Format.of(Optional.ofNullable(ctx.header("Accept")));
    ctx.header("Vary", "Accept");
    ctx.header("Cache-Control", "no-store");
    ctx.contentType(format.contentType());
    ctx.result(metrics.text(format));
  }
}
