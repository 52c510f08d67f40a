package castwell.web.http.api;

import castwell.analysis.unit.Units;
import castwell.capture.command.Commands;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.daemon.Capture;
import castwell.capture.derive.Derivation;
import castwell.capture.intake.HandUncertainty;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Readings.Reading;
import castwell.capture.store.Shot;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.capture.view.shot.DecisionRequest;
import castwell.capture.view.shot.EdgeView;
import castwell.capture.view.shot.FigureView;
import castwell.capture.view.shot.ReadingRequest;
import castwell.capture.view.shot.RetagAllRequest;
import castwell.capture.view.shot.RetagRequest;
import castwell.capture.view.shot.Retagged;
import castwell.capture.view.shot.ShotHistory;
import castwell.capture.view.shot.ShotRead;
import castwell.capture.view.shot.ShotView;
import castwell.web.http.route.Route;
import io.javalin.http.Context;
import java.util.List;
import java.util.OptionalDouble;

/** One shot: its figures under every calibration, its history, and what a person decides of it. */
public final class ShotsApi {
  private final Store store;
  private final Commands commands;
  private final Capture capture;
  private final Derivation derivation;
  private final Views views;

  public ShotsApi(
      Store store, Commands commands, Capture capture, Derivation derivation, Views views) {
    this.store = store;
    this.commands = commands;
    this.capture = capture;
    this.derivation = derivation;
    this.views = views;
  }

  public List<Route> routes() {
    return List.of(
        Route.get("/api/sessions/{name}/shots", "A session's shots")
            .answersAll(ShotView.class, this::ofSession),
        Route.get("/api/shots/{shot_id}", "A shot with all that is known of it")
            .answers(ShotHistory.class, this::history),
        Route.post("/api/shots/tags", "Tags several shots anew: all of them, or none")
            .takes(RetagAllRequest.class)
            .answers(Retagged.class, (ctx, request) -> retagAll(request)),
        Route.post("/api/stations/{station}/readings", "Enters a speed read off another display")
            .takes(ReadingRequest.class)
            .creates(ShotRead.class, this::typed),
        Route.post("/api/shots/{shot_id}/decision", "Decides whether a shot counts")
            .takes(DecisionRequest.class)
            .answers(ShotRead.class, this::decide),
        Route.post("/api/shots/{shot_id}/tags", "Tags a shot anew")
            .takes(RetagRequest.class)
            .answers(ShotRead.class, this::retag));
  }

  private List<ShotView> ofSession(Context ctx) {
    String name = ctx.pathParam("name");
    return store.read(t -> t.shots().ofSession(name).stream().map(views::shot).toList());
  }

  private ShotHistory history(Context ctx) {
    String id = ctx.pathParam("shot_id");
    return store.read(
        t -> {
          Shot shot = find(t, id);
          long passage = shot.passageId();
          return new ShotHistory(
              read(t, shot),
              t.figures().exported(passage).stream().map(FigureView::of).toList(),
              t.raw().exported(passage).stream().map(EdgeView::of).toList(),
              derivation.read(t, shot).map(Views::story),
              t.tags().history(passage).stream().map(Views::tagging).toList(),
              t.decisions().history(passage).stream().map(Views::decision).toList());
        });
  }

  private ShotRead decide(Context ctx, DecisionRequest request) {
    Decided decided =
        request
            .counts()
            .map(counts -> counts ? Decided.BROUGHT_BACK : Decided.SET_ASIDE)
            .orElse(Decided.AS_JUDGED);
    String id = ctx.pathParam("shot_id");
    commands.decide(id, decided, request.reason().orElse(""), "page");
    return read(id);
  }

  private ShotRead retag(Context ctx, RetagRequest request) {
    String id = ctx.pathParam("shot_id");
    commands.retag(id, request.bow(), request.arrow(), "page", request.why().orElse(""));
    return read(id);
  }

  /** A speed read off another display, as sure as such speeds usually are. */
  private ShotRead typed(Context ctx, ReadingRequest request) {
    String station = RangeApi.known(capture, ctx.pathParam("station"));
    double mps = request.speedFps() * Units.METRES_PER_FOOT;
    HandUncertainty usual = HandUncertainty.USUAL;
    Reading reading =
        new Reading(
            OptionalDouble.of(mps),
            usual.ownMps(),
            usual.commonShare() * mps,
            request.note().orElse(""),
            "the range page");
    return read(commands.typed(station, reading, "page"));
  }

  private Retagged retagAll(RetagAllRequest request) {
    List<Commands.Retagging> shots =
        request.shots().stream()
            .map(shot -> new Commands.Retagging(shot.shotId(), shot.bow(), shot.arrow()))
            .toList();
    commands.retag(shots, "page", request.why().orElse(""));
    return new Retagged(shots.size());
  }

  private ShotRead read(String id) {
    return store.read(t -> read(t, find(t, id)));
  }

  private ShotRead read(Transaction t, Shot shot) {
    return views.hinted(t, List.of(shot)).get(0);
  }

  private static Shot find(Transaction t, String id) {
    return t.shots()
        .byShotId(id)
        .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_shot", id));
  }
}
