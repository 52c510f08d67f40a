package castwell.web.http.api;

import castwell.capture.view.data.AdmissionView;
import castwell.capture.view.data.EnterRequest;
import castwell.web.access.Doorkeeper;
import castwell.web.http.guard.AdmissionCookie;
import castwell.web.http.guard.Gatekeeper;
import castwell.web.http.route.Route;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;

/** In by the key and out again. */
public final class AdmissionApi {
  private static final int LARGEST_BODY = 1024;

  private final Gatekeeper gate;
  private final Doorkeeper door;

  public AdmissionApi(Gatekeeper gate, Doorkeeper door) {
    this.gate = gate;
    this.door = door;
  }

  public List<Route> routes() {
    return List.of(
        Route.get("/api/admission", "What whoever asks may do")
            .answers(AdmissionView.class, this::tell),
        Route.post("/api/admission", "Lets a browser in by the key")
            .takes(EnterRequest.class, LARGEST_BODY)
            .mayCreate(AdmissionView.class, this::enter),
        Route.delete("/api/admission", "Lets a browser out").does(this::leave));
  }

  private AdmissionView tell(Context ctx) {
    ctx.header("Cache-Control", "no-store");
    return new AdmissionView(
        gate.mayWatch(ctx),
        gate.mayChange(ctx),
        AdmissionCookie.of(ctx).filter(door::isAdmitted).isPresent());
  }

  private Optional<AdmissionView> enter(Context ctx, EnterRequest request) {
    if (!gate.tryKey(ctx, request.key())) {
      return Optional.empty();
    }
    AdmissionCookie.set(ctx, door.admit());
    return Optional.of(new AdmissionView(true, true, true));
  }

  private void leave(Context ctx) {
    AdmissionCookie.of(ctx).ifPresent(door::leave);
    AdmissionCookie.take(ctx);
  }
}
