package castwell.web.http.api;

import castwell.analysis.unit.Units;
import castwell.capture.command.Commands;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.daemon.Capture;
import castwell.capture.intake.HandUncertainty;
import castwell.capture.misfit.Misfits;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Readings.Reading;
import castwell.capture.store.Shot;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.capture.view.Column;
import castwell.capture.view.shot.EdgeColumns;
import castwell.capture.view.shot.FigureColumns;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** One shot: its figures under every calibration, its history, and what a person decides of it. */
public final class ShotsApi {
  private final Store store;
  private final Commands commands;
  private final Capture capture;
  private final Views views;

  public ShotsApi(Store store, Commands commands, Capture capture, Views views) {
    this.store = store;
    this.commands = commands;
    this.capture = capture;
    this.views = views;
  }

  public void route(JavalinConfig config) {
    config.routes.get("/api/sessions/{name}/shots", this::ofSession);
    config.routes.get("/api/shots/{shot_id}", this::shot);
    config.routes.post("/api/shots/tags", this::retagAll);
    config.routes.post("/api/stations/{station}/readings", this::typed);
    config.routes.post("/api/shots/{shot_id}/decision", this::decide);
    config.routes.post("/api/shots/{shot_id}/tags", this::retag);
  }

  private void ofSession(Context ctx) {
    String name = ctx.pathParam("name");
    ctx.json(store.read(t -> t.shots().ofSession(name).stream().map(views::shot).toList()));
  }

  private void shot(Context ctx) {
    String id = ctx.pathParam("shot_id");
    ctx.json(
        store.read(
            t -> {
              Shot shot = find(t, id);
              Map<String, Object> view = new LinkedHashMap<>();
              view.put("shot", shot(t, shot));
              view.put(
                  "figures",
                  t.figures().exported(shot.passageId()).stream()
                      .map(figure -> Column.row(FigureColumns.COLUMNS, figure))
                      .toList());
              view.put(
                  "edges",
                  t.raw().exported(shot.passageId()).stream()
                      .map(edge -> Column.row(EdgeColumns.COLUMNS, edge))
                      .toList());
              view.put(
                  "tags", t.tags().history(shot.passageId()).stream().map(Views::tagging).toList());
              view.put(
                  "decisions",
                  t.decisions().history(shot.passageId()).stream().map(Views::decision).toList());
              return view;
            }));
  }

  private void decide(Context ctx) {
    Body body = Body.of(ctx, "counts", "reason");
    Decided decided =
        body.truth("counts")
            .map(counts -> counts ? Decided.BROUGHT_BACK : Decided.SET_ASIDE)
            .orElse(Decided.AS_JUDGED);
    String id = ctx.pathParam("shot_id");
    commands.decide(id, decided, body.optionalText("reason").orElse(""), "page");
    answer(ctx, id);
  }

  private void retag(Context ctx) {
    Body body = Body.of(ctx, "bow", "arrow", "why");
    String id = ctx.pathParam("shot_id");
    Optional<String> why = body.optionalText("why");
    commands.retag(
        id, body.optionalText("bow"), body.optionalText("arrow"), "page", why.orElse(""));
    answer(ctx, id);
  }

  /** A speed read off another display, as sure as such speeds usually are. */
  private void typed(Context ctx) {
    Body body = Body.of(ctx, "speed_fps", "note");
    String station = RangeApi.known(capture, ctx.pathParam("station"));
    double mps = body.number("speed_fps") * Units.METRES_PER_FOOT;
    HandUncertainty usual = HandUncertainty.USUAL;
    Reading reading =
        new Reading(
            OptionalDouble.of(mps),
            usual.ownMps(),
            usual.commonShare() * mps,
            body.optionalText("note").orElse(""),
            "the range page");
    String shotId = commands.typed(station, reading, "page");
    ctx.status(201);
    answer(ctx, shotId);
  }

  /** Several at once: all of them, or none. */
  private void retagAll(Context ctx) {
    Body body = Body.of(ctx, "shots", "why");
    List<Commands.Retagging> shots =
        body.objects("shots", "shot_id", "bow", "arrow").stream()
            .map(
                shot ->
                    new Commands.Retagging(
                        shot.text("shot_id"), shot.optionalText("bow"), shot.optionalText("arrow")))
            .toList();
    commands.retag(shots, "page", body.optionalText("why").orElse(""));
    ctx.json(Map.of("shots", shots.size()));
  }

  private void answer(Context ctx, String id) {
    ctx.json(store.read(t -> shot(t, find(t, id))));
  }

  private Map<String, Object> shot(Transaction t, Shot shot) {
    var misfits = Misfits.of(t, List.of(shot));
    return views.shot(shot, Optional.ofNullable(misfits.get(shot.passageId())));
  }

  private static Shot find(Transaction t, String id) {
    return t.shots()
        .byShotId(id)
        .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_shot", id));
  }
}
