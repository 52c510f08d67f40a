package castwell.web.http.api;

import castwell.capture.publish.broker.BrokerState;
import castwell.capture.view.broker.BrokerView;
import castwell.capture.view.broker.Payload;
import castwell.web.http.route.Route;
import castwell.web.text.Speech;
import io.javalin.http.Context;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** How each station stands with the broker, and the schemas of what is published. */
public final class BrokerApi {
  private static final String SCHEMA = "application/schema+json";

  private final Supplier<List<BrokerState>> states;

  public BrokerApi(Supplier<List<BrokerState>> states) {
    this.states = states;
  }

  public List<Route> routes() {
    return Stream.concat(
            Stream.of(
                Route.get("/api/broker", "How each station stands with the broker")
                    .answersAll(BrokerView.class, ctx -> views())),
            Arrays.stream(Payload.values()).map(BrokerApi::schema))
        .toList();
  }

  private List<BrokerView> views() {
    return states.get().stream().map(BrokerApi::view).toList();
  }

  private static BrokerView view(BrokerState state) {
    return new BrokerView(
        state.station(),
        state.connected(),
        Speech.TRADE.say(state.sentence()),
        state.since(),
        state.waiting(),
        state.refused());
  }

  private static Route schema(Payload payload) {
    return Route.get(
            "/api/schemas/" + payload.named() + ".json",
            "The schema of what a broker is told: " + payload.title())
        .documents(ctx -> schema(ctx, payload), SCHEMA);
  }

  private static void schema(Context ctx, Payload payload) {
    ctx.result(payload.schema());
    ctx.contentType(SCHEMA);
  }
}
