package castwell.web.http.api;

import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.analysis.bow.ForceDrawCurve;
import castwell.capture.misfit.Misfits;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shot;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import castwell.capture.view.Column;
import castwell.capture.view.rack.RackColumns;
import castwell.capture.view.shot.ShotColumns;
import castwell.capture.view.station.TagsInForce;
import castwell.capture.wire.Sentence.Levels;
import castwell.capture.wire.Sentence.Surroundings;
import castwell.web.text.Speech;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Stored things as JSON objects in trade units; null is "not known". */
public final class Views {
  private final ZoneId zone;
  private final ShotColumns columns;

  public Views(ZoneId zone) {
    this.zone = zone;
    this.columns = new ShotColumns(zone, Speech.TRADE);
  }

  public Map<String, Object> shot(Shot shot) {
    return Column.row(columns.columns(), shot);
  }

  /** With what fits it better than its tags, if anything does. */
  public Map<String, Object> shot(Shot shot, Optional<Misfits.Hint> misfit) {
    Map<String, Object> view = shot(shot);
    view.put("misfit", misfit.map(Views::misfit).orElse(null));
    return view;
  }

  private static Map<String, Object> misfit(Misfits.Hint hint) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("sentence", Speech.TRADE.say(hint.sentences()));
    view.put("fits", hint.fits().stream().map(Views::fit).toList());
    return view;
  }

  private static Map<String, Object> fit(Misfits.Fit fit) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("bow", fit.bow());
    view.put("arrow", fit.arrow());
    view.put("times_as_likely", fit.timesAsLikely());
    return view;
  }

  public Map<String, Object> link(LinkState link) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("station", link.station());
    view.put("port", link.port());
    view.put("state", link.state().name().toLowerCase(Locale.ROOT));
    view.put("sentence", Speech.TRADE.say(link.sentence()));
    view.put("device", link.device().orElse(null));
    view.put("gate_a", link.levels().map(levels -> word(levels.blockedA())).orElse(null));
    view.put("gate_b", link.levels().map((Levels levels) -> word(levels.blockedB())).orElse(null));
    view.put("since", link.since().toString());
    return view;
  }

  /** Whether a station's passages get onto the disk. */
  public static Map<String, Object> store(StoreState store) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("station", store.station());
    view.put("trouble", store.trouble().map(Speech.TRADE::say).orElse(null));
    view.put("since", store.since().toString());
    view.put("waiting", store.waiting());
    view.put("full", store.full());
    return view;
  }

  /** What a board's gates see at a heartbeat: light of 1023. */
  public static Map<String, Object> light(String station, HeardBeat heard) {
    Surroundings around = heard.beat().surroundings();
    Optional<Levels> levels = heard.beat().levels();
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("station", station);
    view.put("at", heard.at().toString());
    view.put("light_a", known(around.lightA()));
    view.put("light_b", known(around.lightB()));
    view.put("gate_a", levels.map(l -> word(l.blockedA())).orElse(null));
    view.put("gate_b", levels.map(l -> word(l.blockedB())).orElse(null));
    return view;
  }

  private static Integer known(OptionalInt value) {
    return value.isPresent() ? (Integer) value.getAsInt() : null;
  }

  private static String word(boolean blocked) {
    return blocked ? "blocked" : "clear";
  }

  /** Who shoots what at a station at an instant. */
  public Map<String, Object> tags(Transaction t, String station, Instant at) {
    return TagsInForce.row(t, station, at, zone);
  }

  static Map<String, Object> tagging(Tags.Tagging tagging) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("bow", tagging.bow().orElse(null));
    view.put("arrow", tagging.arrow().orElse(null));
    view.put("at", tagging.at().toString());
    view.put("by", tagging.taggedBy());
    view.put("why", tagging.why());
    return view;
  }

  static Map<String, Object> decision(Shot.Decision decision) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("decided", decision.decided().name().toLowerCase(Locale.ROOT).replace('_', ' '));
    view.put("reason", decision.reason());
    view.put("at", decision.at().toString());
    view.put("by", decision.by());
    return view;
  }

  List<Map<String, Object>> bows(Transaction t, Instant at) {
    Set<Long> retired = t.retirements().bows();
    return t.rack().bowNames().stream()
        .flatMap((Rack.Named bow) -> t.rack().state(bow.id(), at).stream())
        .map(state -> with(bow(state), "retired", retired.contains(state.bowId())))
        .toList();
  }

  Map<String, Object> bow(BowState state) {
    return named(Column.row(RackColumns.bows(zone), state), "bow");
  }

  /** As exports tell it, but that the thing itself has a name. */
  private static Map<String, Object> named(Map<String, Object> row, String key) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("name", row.remove(key));
    view.putAll(row);
    return view;
  }

  Map<String, Object> forceDraw(BowState state, List<ForceDrawCurve.Point> points) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("bow", state.bow());
    view.put("state_on", stateName(state));
    view.put("points", points.stream().map(Views::point).toList());
    return view;
  }

  private static Map<String, Object> point(ForceDrawCurve.Point point) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("draw_length_in", point.drawLengthM() / METRES_PER_INCH);
    view.put("draw_force_lb", point.drawN() / NEWTONS_PER_POUND);
    view.put(
        "let_down_lb",
        point.letDownN().stream().mapToObj(n -> n / NEWTONS_PER_POUND).findFirst().orElse(null));
    return view;
  }

  List<Map<String, Object>> arrows(Transaction t) {
    Set<Long> retired = t.retirements().arrows();
    return t.rack().arrows().stream()
        .map(arrow -> with(arrow(arrow), "retired", retired.contains(arrow.id())))
        .toList();
  }

  private static Map<String, Object> arrow(Arrow arrow) {
    return named(Column.row(RackColumns.ARROWS, arrow), "arrow");
  }

  private static Map<String, Object> with(Map<String, Object> view, String key, Object value) {
    view.put(key, value);
    return view;
  }

  private String stateName(BowState state) {
    return ShotColumns.stateName(state.since(), zone);
  }
}
