package castwell.web.workbench;

import static castwell.web.unit.Dimension.SPEED;

import castwell.capture.cell.SessionCells.Stray;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shot;
import castwell.web.chart.Axis;
import castwell.web.chart.Chart;
import castwell.web.chart.FigureTable;
import castwell.web.chart.Mark;
import castwell.web.chart.Mark.Point;
import castwell.web.chart.Style;
import castwell.web.text.Speech;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A session's shots: all of them in a chart, and some at a time in a list. */
public final class SessionShots {
  private static final int MOST = 50;

  private final PageRequest request;
  private final Speech speech;
  private final List<Shot> shots;
  private final List<Row> rows;

  /**
   * @param ends the first first
   * @param told which of all shots these are, "" for all of them
   * @param earlier number of the shot at which the list before begins
   * @param later number of the shot at which the list after begins
   */
  public record Listed(List<End> ends, String told, OptionalInt earlier, OptionalInt later) {}

  public record End(String name, List<Row> shots) {}

  /**
   * @param reason why it doesn't count, or why it does in spite of the rules
   */
  public record Row(
      String id,
      String time,
      String bow,
      String arrow,
      String speed,
      boolean counts,
      String reason) {}

  SessionShots(PageRequest request, List<Shot> shots, List<Stray> strays) {
    this.request = request;
    this.speech = request.speech();
    this.shots = shots;
    Map<String, Stray> byShot =
        strays.stream().collect(Collectors.toMap(stray -> stray.shot().id(), Function.identity()));
    this.rows =
        shots.stream()
            .map(shot -> row(shot, Optional.ofNullable(byShot.get(shot.shotId()))))
            .toList();
  }

  /** Every shot over time; one that doesn't count is a cross. */
  Chart chart() {
    boolean isByArrow = Style.isEnoughFor(cells());
    Map<String, List<Point>> counting = new LinkedHashMap<>();
    List<Point> aside = new ArrayList<>();
    FigureTable.Rows numbers =
        new FigureTable.Rows(
            request.say("session.time"),
            request.say("bow"),
            request.say("arrow"),
            request.say("speed", speech.unit(SPEED)) + ", " + request.say("speed.at_gates"),
            request.say("session.counts"));
    for (int i = 0; i < shots.size(); i++) {
      Shot shot = shots.get(i);
      Row row = rows.get(i);
      numbers.add(
          row.time(),
          row.bow(),
          row.arrow(),
          row.speed(),
          row.counts() ? request.say("yes") : row.reason());
      if (shot.figure().speedMps().isPresent()) {
        Point point =
            Point.of(
                shot.fired().toEpochMilli(),
                speech.in(SPEED, shot.figure().speedMps().getAsDouble()),
                row.time() + ", " + row.bow() + ", " + row.arrow() + ": " + row.speed());
        if (row.counts()) {
          counting
              .computeIfAbsent(
                  isByArrow ? row.bow() + " · " + row.arrow() : row.bow(), k -> new ArrayList<>())
              .add(point);
        } else {
          aside.add(point);
        }
      }
    }
    List<Mark> marks = new ArrayList<>();
    counting.forEach(
        (name, points) -> marks.add(Mark.Points.of(name, Style.of(marks.size()), points)));
    if (!aside.isEmpty()) {
      marks.add(Mark.Points.of(request.say("session.aside"), Style.ASIDE, aside));
    }
    return new Chart(
        "run",
        request.say("session.run_title"),
        request.say(marks.isEmpty() ? "session.run_empty" : "session.run_told"),
        Axis.dates(""),
        Axis.of(request.say("speed", speech.unit(SPEED)) + ", " + request.say("speed.at_gates")),
        marks,
        numbers.table());
  }

  private int cells() {
    return (int)
        shots.stream()
            .map(shot -> List.of(shot.bow().map(BowState::bow), shot.arrow()))
            .distinct()
            .count();
  }

  /**
   * @param from number of the first shot to list, counted from 0
   */
  Listed listed(OptionalDouble from) {
    int first = (int) Math.max(0, Math.min(shots.size() - 1.0, from.orElse(0)));
    int last = Math.min(shots.size(), first + MOST);
    Map<Integer, List<Row>> ends = new LinkedHashMap<>();
    for (int i = first; i < last; i++) {
      ends.computeIfAbsent(shots.get(i).end(), k -> new ArrayList<>()).add(rows.get(i));
    }
    return new Listed(
        ends.entrySet().stream()
            .map(end -> new End(request.say("session.end", end.getKey()), end.getValue()))
            .toList(),
        shots.size() > MOST ? request.say("session.listed", first + 1, last, shots.size()) : "",
        first > 0 ? OptionalInt.of(Math.max(0, first - MOST)) : OptionalInt.empty(),
        last < shots.size() ? OptionalInt.of(last) : OptionalInt.empty());
  }

  private Row row(Shot shot, Optional<Stray> stray) {
    return new Row(
        shot.shotId(),
        Days.time(shot.fired(), request.zone()),
        shot.bow().map(BowState::bow).orElse(""),
        shot.arrow().map(Arrow::name).orElse(""),
        speech.figure(SPEED, shot.figure().speedMps().orElse(Double.NaN), uOf(shot)),
        shot.counts() && !stray.filter(Stray::isSetAside).isPresent(),
        stray.map(this::told).orElseGet(() -> speech.say(shot.reasons())));
  }

  private String told(Stray stray) {
    String key = stray.isSetAside() ? "session.stray" : "session.doubted";
    return request.say(key, speech.say(stray.sure()));
  }

  private static double uOf(Shot shot) {
    return Math.hypot(
        shot.figure().speedUOwnMps().orElse(Double.NaN),
        shot.figure().speedUCommonMps().orElse(Double.NaN));
  }
}
