package castwell.web.http.api;

import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.health.HealthView;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;

/** How everything is, or one station with what it shares with others. */
public final class HealthApi {
  private final HealthView health;

  public HealthApi(HealthView health) {
    this.health = health;
  }

  public void route(JavalinConfig config) {
    config.routes.get("/api/health", this::health);
  }

  private void health(Context ctx) {
    String station = ctx.queryParam("station");
    ctx.json(station == null ? health.all() : health.of(known(station)));
  }

  private String known(String station) {
    if (!health.checkup().stations().contains(station)) {
      throw Refused.of(Why.NOT_FOUND, "refused.no_station", station);
    }
    return station;
  }
}
