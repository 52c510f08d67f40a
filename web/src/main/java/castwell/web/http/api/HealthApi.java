package castwell.web.http.api;

import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.health.HealthView;
import castwell.capture.view.health.HealthTold;
import castwell.web.http.route.Route;
import io.javalin.http.Context;
import java.util.List;

/** How everything is, or one station with what it shares with others. */
public final class HealthApi {
  private final HealthView health;

  public HealthApi(HealthView health) {
    this.health = health;
  }

  public List<Route> routes() {
    return List.of(
        Route.get("/api/health", "How everything is, or one station with what it shares")
            .text("station", "the one; all of them otherwise")
            .answers(HealthTold.class, this::health));
  }

  private HealthTold health(Context ctx) {
    String station = ctx.queryParam("station");
    return station == null ? health.all() : health.of(known(station));
  }

  private String known(String station) {
    if (!health.checkup().stations().contains(station)) {
      throw Refused.of(Why.NOT_FOUND, "refused.no_station", station);
    }
    return station;
  }
}
