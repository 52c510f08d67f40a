package castwell.web.http.api;

import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.unit.Units;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import castwell.capture.view.range.CurrentSession;
import castwell.capture.view.range.EndView;
import castwell.capture.view.range.GroupView;
import castwell.capture.view.range.RangeView;
import castwell.capture.view.shot.ShotRead;
import castwell.web.settings.Version;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Everything that the range page shows, at one moment. */
public final class RangeViews {
  private final Views views;
  private final boolean rehearsal;

  /** The shots of one end that were shot with one bow and one arrow. */
  private record Cell(Optional<String> bow, Optional<String> arrow) {}

  public RangeViews(Views views, boolean rehearsal) {
    this.views = views;
    this.rehearsal = rehearsal;
  }

  /**
   * @param clock what is odd about the computer's
   */
  RangeView of(
      Transaction t,
      String station,
      List<LinkState> links,
      List<StoreState> stores,
      Optional<String> clock,
      Instant now) {
    Optional<Shot> last = t.shots().last(station);
    List<Shot> end =
        last.map(shot -> t.shots().ofEnd(shot.session(), shot.end())).orElse(List.of());
    List<ShotRead> hinted = views.hinted(t, end);
    return new RangeView(
        Version.TEXT,
        rehearsal,
        now,
        t.feed().last(),
        station,
        links.stream().map(Views::link).toList(),
        views.tags(t, station, now),
        t.sessions().at(station, now).map(s -> session(t, s)),
        last.map(shot -> new EndView(shot.end(), hinted, groups(end))),
        last.map(shot -> hinted.get(hinted.size() - 1)),
        PlanViews.current(t, station),
        views.bows(t, now),
        views.arrows(t),
        stores.stream().map(Views::store).toList(),
        clock);
  }

  private static CurrentSession session(Transaction t, Session session) {
    var tally = t.shots().tally(session.id());
    return new CurrentSession(
        session.name(), session.startedMs(), tally.passages(), tally.counting());
  }

  private static List<GroupView> groups(List<Shot> shots) {
    Map<Cell, List<Shot>> cells = new LinkedHashMap<>();
    for (Shot shot : shots) {
      Cell cell = new Cell(shot.bow().map(BowState::bow), shot.arrow().map(Rack.Arrow::name));
      cells.computeIfAbsent(cell, c -> new ArrayList<>()).add(shot);
    }
    return cells.entrySet().stream().map(e -> group(e.getKey(), e.getValue())).toList();
  }

  private static GroupView group(Cell cell, List<Shot> shots) {
    double[] speeds =
        shots.stream()
            .filter(Shot::counts)
            .flatMapToDouble(shot -> shot.figure().speedMps().stream())
            .map(mps -> mps / Units.METRES_PER_FOOT)
            .toArray();
    return new GroupView(
        cell.bow(),
        cell.arrow(),
        speeds.length,
        shots.size() - speeds.length,
        known(Mean.of(speeds)),
        known(StandardDeviation.of(speeds)));
  }

  private static OptionalDouble known(double value) {
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
