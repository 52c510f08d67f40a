package castwell.web.http.api;

import castwell.web.access.Doorkeeper;
import castwell.web.http.guard.AdmissionCookie;
import castwell.web.http.guard.Gatekeeper;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Map;

/** In by the key and out again. */
public final class AdmissionApi {
  private static final int LARGEST_BODY = 1024;

  private final Gatekeeper gate;
  private final Doorkeeper door;

  public AdmissionApi(Gatekeeper gate, Doorkeeper door) {
    this.gate = gate;
    this.door = door;
  }

  public void route(JavalinConfig config) {
    config.routes.get("/api/admission", this::tell);
    config.routes.post("/api/admission", this::enter);
    config.routes.delete("/api/admission", this::leave);
  }

  /** What whoever asks may do, and whether by a cookie of which they can be rid. */
  private void tell(Context ctx) {
    ctx.header("Cache-Control", "no-store");
    ctx.json(
        Map.of(
            "may_watch", gate.mayWatch(ctx),
            "may_change", gate.mayChange(ctx),
            "entered", AdmissionCookie.of(ctx).filter(door::isAdmitted).isPresent()));
  }

  private void enter(Context ctx) {
    String key = Body.of(ctx, LARGEST_BODY, "key").text("key");
    if (gate.tryKey(ctx, key)) {
      AdmissionCookie.set(ctx, door.admit());
      ctx.status(HttpStatus.CREATED);
      ctx.json(Map.of("may_watch", true, "may_change", true, "entered", true));
    }
  }

  private void leave(Context ctx) {
    AdmissionCookie.of(ctx).ifPresent(door::leave);
    AdmissionCookie.take(ctx);
    ctx.status(HttpStatus.NO_CONTENT);
  }
}
