package castwell.web.http.api;

import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.analysis.bow.ForceDrawCurve;
import castwell.analysis.shot.Edge;
import castwell.capture.derive.Read;
import castwell.capture.misfit.Misfits;
import castwell.capture.misfit.StrayHints;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shot;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import castwell.capture.view.InUnits;
import castwell.capture.view.StateName;
import castwell.capture.view.rack.ArrowView;
import castwell.capture.view.rack.BowView;
import castwell.capture.view.rack.ForceDrawPointView;
import castwell.capture.view.rack.ForceDrawView;
import castwell.capture.view.shot.DecisionView;
import castwell.capture.view.shot.EdgePartView;
import castwell.capture.view.shot.FitView;
import castwell.capture.view.shot.MisfitView;
import castwell.capture.view.shot.ShotRead;
import castwell.capture.view.shot.ShotView;
import castwell.capture.view.shot.ShotViews;
import castwell.capture.view.shot.StoryView;
import castwell.capture.view.shot.StrayHintView;
import castwell.capture.view.shot.TaggingView;
import castwell.capture.view.station.LightView;
import castwell.capture.view.station.LinkView;
import castwell.capture.view.station.Seen;
import castwell.capture.view.station.StoreView;
import castwell.capture.view.station.TagsInForce;
import castwell.capture.view.station.TagsView;
import castwell.capture.wire.Sentence.Levels;
import castwell.capture.wire.Sentence.Surroundings;
import castwell.web.text.Speech;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Stored things as they leave the program over HTTP. */
public final class Views {
  private final ZoneId zone;
  private final ShotViews shots;

  public Views(ZoneId zone) {
    this.zone = zone;
    this.shots = new ShotViews(zone, Speech.TRADE);
  }

  public ShotView shot(Shot shot) {
    return shots.of(shot);
  }

  /** Shots of one session, each with what is odd about it. */
  List<ShotRead> hinted(Transaction t, List<Shot> some) {
    Map<Long, Misfits.Hint> misfits = Misfits.of(t, some);
    Map<String, StrayHints.Hint> strays = StrayHints.of(t, zone, some);
    return some.stream()
        .map(
            shot ->
                new ShotRead(
                    shot(shot),
                    Optional.ofNullable(misfits.get(shot.passageId())).map(Views::misfit),
                    Optional.ofNullable(strays.get(shot.shotId())).map(Views::stray)))
        .toList();
  }

  private static StrayHintView stray(StrayHints.Hint hint) {
    return new StrayHintView(Speech.TRADE.say(hint.sentence()), hint.chance(), hint.isSetAside());
  }

  private static MisfitView misfit(Misfits.Hint hint) {
    return new MisfitView(
        Speech.TRADE.say(hint.sentences()), hint.fits().stream().map(Views::fit).toList());
  }

  /** How a shot's edges were read. */
  static StoryView story(Read read) {
    Edge first = read.passage().edges().get(0);
    return new StoryView(
        read.passage().edges().stream()
            .map(
                edge ->
                    new EdgePartView(
                        edge.number(),
                        edge.gate().name(),
                        String.valueOf(edge.kind().letter()),
                        (edge.ticks() - first.ticks()) / read.hz() * 1e6,
                        read.assessment().reading().parts().get(edge.number())))
            .toList(),
        read.assessment().notes().stream().map(Speech.TRADE::say).toList(),
        read.assessment().reading().arrow().stream()
            .mapToDouble(arrow -> Math.exp(arrow.marginNats()))
            .findFirst());
  }

  private static FitView fit(Misfits.Fit fit) {
    return new FitView(fit.bow(), fit.arrow(), fit.timesAsLikely());
  }

  public static LinkView link(LinkState link) {
    return new LinkView(
        link.station(),
        link.port(),
        link.state(),
        Speech.TRADE.say(link.sentence()),
        link.device(),
        link.levels().map(levels -> Seen.of(levels.blockedA())),
        link.levels().map(levels -> Seen.of(levels.blockedB())),
        link.since());
  }

  /** Whether a station's passages get onto the disk. */
  public static StoreView store(StoreState store) {
    return new StoreView(
        store.station(),
        store.trouble().map(Speech.TRADE::say),
        store.since(),
        store.waiting(),
        store.full());
  }

  /** What a board's gates see at a heartbeat: light of 1023. */
  public static LightView light(String station, HeardBeat heard) {
    Surroundings around = heard.beat().surroundings();
    Optional<Levels> levels = heard.beat().levels();
    return new LightView(
        station,
        heard.at(),
        around.lightA(),
        around.lightB(),
        levels.map(l -> Seen.of(l.blockedA())),
        levels.map(l -> Seen.of(l.blockedB())));
  }

  /** Who shoots what at a station at an instant. */
  public TagsView tags(Transaction t, String station, Instant at) {
    return TagsInForce.of(t, station, at, zone);
  }

  static TaggingView tagging(Tags.Tagging tagging) {
    return new TaggingView(
        tagging.bow(), tagging.arrow(), tagging.at(), tagging.taggedBy(), tagging.why());
  }

  static DecisionView decision(Shot.Decision decision) {
    return new DecisionView(decision.decided(), decision.reason(), decision.at(), decision.by());
  }

  List<BowView> bows(Transaction t, Instant at) {
    Set<Long> retired = t.retirements().bows();
    return t.rack().bowNames().stream()
        .flatMap((Rack.Named bow) -> t.rack().state(bow.id(), at).stream())
        .map(state -> BowView.of(state, retired.contains(state.bowId()), zone))
        .toList();
  }

  List<ArrowView> arrows(Transaction t) {
    Set<Long> retired = t.retirements().arrows();
    return t.rack().arrows().stream()
        .map(arrow -> ArrowView.of(arrow, retired.contains(arrow.id())))
        .toList();
  }

  ForceDrawView forceDraw(BowState state, List<ForceDrawCurve.Point> points) {
    return new ForceDrawView(
        state.bow(), StateName.of(state.since(), zone), points.stream().map(Views::point).toList());
  }

  private static ForceDrawPointView point(ForceDrawCurve.Point point) {
    return new ForceDrawPointView(
        point.drawLengthM() / METRES_PER_INCH,
        point.drawN() / NEWTONS_PER_POUND,
        InUnits.of(point.letDownN(), NEWTONS_PER_POUND));
  }
}
