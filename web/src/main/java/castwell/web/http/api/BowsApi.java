package castwell.web.http.api;

import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.capture.command.BowCommands;
import castwell.capture.command.Commands;
import castwell.capture.store.Store;
import castwell.capture.view.InUnits;
import castwell.capture.view.rack.BowRequest;
import castwell.capture.view.rack.BowView;
import castwell.capture.view.rack.ForceDrawRequest;
import castwell.capture.view.rack.ForceDrawView;
import castwell.capture.view.rack.Named;
import castwell.capture.view.rack.PointRequest;
import castwell.capture.view.rack.RetireRequest;
import castwell.capture.view.rack.Retired;
import castwell.capture.view.rack.StateRequest;
import castwell.web.http.route.Route;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** Bows with their states. */
public final class BowsApi {
  private final Store store;
  private final Commands commands;
  private final Views views;
  private final Clock clock;
  private final ZoneId zone;

  public BowsApi(Store store, Commands commands, Views views, Clock clock, ZoneId zone) {
    this.store = store;
    this.commands = commands;
    this.views = views;
    this.clock = clock;
    this.zone = zone;
  }

  public List<Route> routes() {
    return List.of(
        Route.get("/api/bows", "All bows, each in the state that it is in")
            .answersAll(BowView.class, ctx -> store.read(t -> views.bows(t, clock.instant()))),
        Route.post("/api/bows", "Adds a bow")
            .takes(BowRequest.class)
            .creates(Named.class, this::addBow),
        Route.post("/api/bows/{name}/states", "Begins a state of a bow")
            .takes(StateRequest.class)
            .creates(Named.class, this::addState),
        Route.get("/api/bows/{name}/force-draw", "A bow's force-draw curve in one state")
            .text("state_on", "the date of the state; the state it is in otherwise")
            .answers(ForceDrawView.class, this::forceDraw),
        Route.post("/api/bows/{name}/force-draw", "Enters a bow's force-draw curve")
            .takes(ForceDrawRequest.class)
            .creates(Named.class, this::addForceDraw),
        Route.post("/api/bows/{name}/retired", "Takes a bow out of use, or up again")
            .takes(RetireRequest.class)
            .answers(Retired.class, this::retire));
  }

  private Named addBow(Context ctx, BowRequest request) {
    commands.bows().add(request.name(), state(request.state()));
    return new Named(request.name());
  }

  private Named addState(Context ctx, StateRequest request) {
    String name = ctx.pathParam("name");
    commands.bows().addState(name, state(request));
    return new Named(name);
  }

  private ForceDrawView forceDraw(Context ctx) {
    String name = ctx.pathParam("name");
    return store.read(
        t -> {
          var bow = BowCommands.bow(t, name);
          Instant at = at(Optional.ofNullable(ctx.queryParam("state_on")));
          return t.rack()
              .state(bow.id(), at)
              .map(state -> views.forceDraw(state, t.forceDraws().last(bow.id(), state.since())))
              .orElseThrow();
        });
  }

  private Named addForceDraw(Context ctx, ForceDrawRequest request) {
    String name = ctx.pathParam("name");
    List<Point> points = request.points().stream().map(BowsApi::point).toList();
    commands.bows().addForceDraw(name, at(request.stateOn()), points, "page");
    return new Named(name);
  }

  private static Point point(PointRequest point) {
    return new Point(
        point.drawLengthIn() * METRES_PER_INCH,
        point.drawForceLb() * NEWTONS_PER_POUND,
        InUnits.si(point.letDownLb(), NEWTONS_PER_POUND));
  }

  private Retired retire(Context ctx, RetireRequest request) {
    String name = ctx.pathParam("name");
    commands.bows().retire(name, request.retired(), "page");
    return new Retired(name, request.retired());
  }

  private BowCommands.State state(StateRequest request) {
    return new BowCommands.State(
        at(request.stateOn()),
        request.drawWeightLb() * NEWTONS_PER_POUND,
        request.drawLengthIn() * METRES_PER_INCH,
        request.measures(),
        request.done().orElse(""));
  }

  private Instant at(Optional<String> date) {
    return date.map(text -> Dates.instant("state_on", text, zone)).orElseGet(clock::instant);
  }
}
