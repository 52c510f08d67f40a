package castwell.capture.intake;

import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.capture.command.Alike;
import castwell.capture.command.BowCommands;
import castwell.capture.command.Checks;
import castwell.capture.intake.sheet.CantRead;
import castwell.capture.intake.sheet.Complaints;
import castwell.capture.intake.sheet.Line;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.capture.view.StateName;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Takes in force-draw curves, one point a line. Each curve's draw lengths have to rise. */
final class ForceDrawIntake implements Intake {
  private final Transaction t;
  private final String by;
  private final ZoneId zone;
  private final Instant now;
  private final RackNames rack;
  private final Map<String, Curve> curves = new LinkedHashMap<>();
  private final Tally tally = new Tally();

  /** The points of one bow state, and the lines they stand in. */
  private record Curve(BowState state, List<Point> points, List<Integer> lines) {
    int firstLine() {
      return lines.get(0);
    }
  }

  ForceDrawIntake(Transaction t, String by, ZoneId zone, Instant now) {
    this.t = t;
    this.by = by;
    this.zone = zone;
    this.now = now;
    this.rack = new RackNames(t);
  }

  @Override
  public void take(Line line) {
    String bow = line.neededWords("bow");
    String state = StateName.of(BowIntake.since(line, zone), zone);
    Point point =
        new Point(
            line.neededNumber("draw_length"),
            line.neededNumber("draw_force"),
            line.number("let_down"));
    Checks.point(point);
    Curve curve =
        curves.computeIfAbsent(
            (bow + "\n" + state).toLowerCase(Locale.ROOT), key -> begin(line, bow, state));
    refuseNotRising(line, curve, point);
    curve.points().add(point);
    curve.lines().add(line.number());
  }

  private Curve begin(Line line, String bow, String name) {
    long bowId = rack.bow(line, bow);
    BowState state =
        BowIntake.state(t, bow, name, zone)
            .orElseThrow(
                () -> new CantRead("sheet.no_state", line.named("state_on"), bow, names(bowId)));
    return new Curve(state, new ArrayList<>(), new ArrayList<>());
  }

  private String names(long bowId) {
    return t.rack().states(bowId).stream()
        .map(state -> StateName.of(state.since(), zone))
        .collect(Collectors.joining(", "));
  }

  private static void refuseNotRising(Line line, Curve curve, Point point) {
    int last = curve.points().size() - 1;
    if (last >= 0 && point.drawLengthM() <= curve.points().get(last).drawLengthM()) {
      throw new CantRead("sheet.not_rising", line.named("draw_length"), curve.lines().get(last));
    }
  }

  @Override
  public void finish(Complaints complaints) {
    complaints.each(curves.values(), Curve::firstLine, this::enter);
  }

  private void enter(Curve curve) {
    BowState state = curve.state();
    if (same(curve.points(), t.forceDraws().last(state.bowId(), state.since()))) {
      tally.already();
    } else {
      BowCommands.enterForceDraw(t, state.bow(), state.since(), curve.points(), now, by);
      tally.take();
    }
  }

  private static boolean same(List<Point> told, List<Point> there) {
    boolean alike = told.size() == there.size();
    for (int i = 0; alike && i < told.size(); i++) {
      Point a = told.get(i);
      Point b = there.get(i);
      alike =
          Alike.are(a.drawLengthM(), b.drawLengthM())
              && Alike.are(a.drawN(), b.drawN())
              && Alike.are(a.letDownN(), b.letDownN());
    }
    return alike;
  }

  @Override
  public Tally tally() {
    return tally;
  }
}
