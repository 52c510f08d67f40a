package castwell.web.http.api;

import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.unit.Units;
import castwell.capture.misfit.Misfits;
import castwell.capture.station.LinkState;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import castwell.web.settings.Version;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Everything that the range page shows, at one moment. */
public final class RangeView {
  private final Views views;
  private final boolean rehearsal;

  /** The shots of one end that were shot with one bow and one arrow. */
  private record Cell(Optional<String> bow, Optional<String> arrow) {}

  public RangeView(Views views, boolean rehearsal) {
    this.views = views;
    this.rehearsal = rehearsal;
  }

  Map<String, Object> of(Transaction t, String station, List<LinkState> links, Instant now) {
    Map<String, Object> view = new LinkedHashMap<>();
    Optional<Shot> last = t.shots().last(station);
    view.put("version", Version.TEXT);
    view.put("rehearsal", rehearsal);
    view.put("now", now.toString());
    view.put("event", t.feed().last());
    view.put("station", station);
    view.put("stations", links.stream().map(views::link).toList());
    view.put("tags", views.tags(t, station, now));
    view.put("session", t.sessions().at(station, now).map(s -> session(t, s)).orElse(null));
    List<Shot> end =
        last.map(shot -> t.shots().ofEnd(shot.session(), shot.end())).orElse(List.of());
    Map<Long, Misfits.Hint> misfits = Misfits.of(t, end);
    view.put("end", last.map(shot -> end(shot.end(), end, misfits)).orElse(null));
    view.put("last", last.map(shot -> shot(shot, misfits)).orElse(null));
    view.put("plan", PlanView.current(t, station).orElse(null));
    view.put("bows", views.bows(t, now));
    view.put("arrows", views.arrows(t));
    return view;
  }

  private static Map<String, Object> session(Transaction t, Session session) {
    var tally = t.shots().tally(session.id());
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("name", session.name());
    view.put("started_at", session.startedMs().toString());
    view.put("shots", tally.passages());
    view.put("counting", tally.counting());
    return view;
  }

  private Map<String, Object> shot(Shot shot, Map<Long, Misfits.Hint> misfits) {
    return views.shot(shot, Optional.ofNullable(misfits.get(shot.passageId())));
  }

  private Map<String, Object> end(int number, List<Shot> shots, Map<Long, Misfits.Hint> misfits) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("number", number);
    view.put("shots", shots.stream().map(shot -> shot(shot, misfits)).toList());
    view.put("groups", groups(shots));
    return view;
  }

  private static List<Map<String, Object>> groups(List<Shot> shots) {
    Map<Cell, List<Shot>> cells = new LinkedHashMap<>();
    for (Shot shot : shots) {
      Cell cell = new Cell(shot.bow().map(BowState::bow), shot.arrow().map(Rack.Arrow::name));
      cells.computeIfAbsent(cell, c -> new ArrayList<>()).add(shot);
    }
    return cells.entrySet().stream().map(e -> group(e.getKey(), e.getValue())).toList();
  }

  private static Map<String, Object> group(Cell cell, List<Shot> shots) {
    double[] speeds =
        shots.stream()
            .filter(Shot::counts)
            .flatMapToDouble(shot -> shot.figure().speedMps().stream())
            .map(mps -> mps / Units.METRES_PER_FOOT)
            .toArray();
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("bow", cell.bow().orElse(null));
    view.put("arrow", cell.arrow().orElse(null));
    view.put("n", speeds.length);
    view.put("set_aside", shots.size() - speeds.length);
    view.put("mean_fps", known(Mean.of(speeds)));
    view.put("sd_fps", known(StandardDeviation.of(speeds)));
    return view;
  }

  private static Double known(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }
}
