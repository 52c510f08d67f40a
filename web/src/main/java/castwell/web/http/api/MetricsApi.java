package castwell.web.http.api;

import castwell.web.metrics.Metrics;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.Optional;

/** <code>/metrics</code>, in the format that the reader prefers. */
public final class MetricsApi {
  private final Metrics metrics;

  public MetricsApi(Metrics metrics) {
    this.metrics = metrics;
  }

  public void route(JavalinConfig config) {
    config.routes.get("/metrics", this::metrics);
  }

  private void metrics(Context ctx) {
    Metrics.Format format = Metrics.Format.of(Optional.ofNullable(ctx.header("Accept")));
    ctx.header("Vary", "Accept");
    ctx.header("Cache-Control", "no-store");
    ctx.contentType(format.contentType());
    ctx.result(metrics.text(format));
  }
}
