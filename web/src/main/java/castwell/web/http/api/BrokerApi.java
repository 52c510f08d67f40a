package castwell.web.http.api;

import castwell.capture.publish.Schemas;
import castwell.capture.publish.broker.BrokerState;
import castwell.web.text.Speech;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** How each station stands with the broker, and the schemas of what is published. */
public final class BrokerApi {
  private final Supplier<List<BrokerState>> states;

  public BrokerApi(Supplier<List<BrokerState>> states) {
    this.states = states;
  }

  public void route(JavalinConfig config) {
    config.routes.get("/api/broker", this::states);
    for (String name : Schemas.NAMES) {
      config.routes.get("/api/schemas/" + name + ".json", ctx -> schema(ctx, name));
    }
  }

  private void states(Context ctx) {
    ctx.json(states.get().stream().map(BrokerApi::view).toList());
  }

  private static Map<String, Object> view(BrokerState state) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("station", state.station());
    view.put("connected", state.connected());
    view.put("sentence", Speech.TRADE.say(state.sentence()));
    view.put("since", state.since().toString());
    view.put("waiting", state.waiting());
    view.put("tags_refused", state.refused());
    return view;
  }

  private static void schema(Context ctx, String name) {
    ctx.result(Schemas.text(name));
    ctx.contentType("application/schema+json");
  }
}
