package castwell.web.season;

import castwell.capture.view.Interval95;
import castwell.capture.view.report.bow.AnyDayView;
import castwell.capture.view.report.bow.BowReportView;
import castwell.capture.view.report.cell.CastView;
import castwell.capture.view.report.ranking.PairView;
import castwell.capture.view.report.ranking.RankedBow;
import castwell.capture.view.report.reach.ReachedView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What reports told of a season against its truth, counted: of bows on any day. */
final class Checked {
  static final String ALL = "all";
  static final String CAST = "cast, any day";
  static final String ANY_CAST = "any bow's cast";
  static final String TODAY_AS_ANY = "today's for any day";

  private final TrueSeason truth;
  private final Told told;
  private final Tallies figures;
  private final Tallies changes;
  private final TrueCells cells;
  private final List<String> rows = new ArrayList<>();

  private Checked(TrueSeason truth, Told told, Tallies figures, Tallies changes) {
    this.truth = truth;
    this.told = told;
    this.figures = figures;
    this.changes = changes;
    cells = new TrueCells(truth);
    Shooting how = truth.shooting();
    rows.add(ALL);
    rows.add("days %.1f %%, bows' %.1f %%".formatted(100 * how.day(), 100 * how.bowDay()));
    rows.add("release: " + how.release().name().toLowerCase(Locale.ROOT).replace('_', ' '));
    rows.add("shots vary by %.1f %%".formatted(100 * how.shot()));
    rows.add("arrows' own %.1f %%".formatted(100 * how.arrow()));
    rows.add(how.areUneven() ? "cells uneven" : "cells even");
    rows.add(how.isOneDisplay() ? "one display, 0.5 %" : "a display each session, 0.2 %");
  }

  static void add(TrueSeason truth, Told told, double reachGr, Tallies figures, Tallies changes) {
    Checked checked = new Checked(truth, told, figures, changes);
    checked.bow(told.bow());
    checked.reach(reachGr);
    checked.pair();
    told.ranking().ranking().forEach(checked::ranked);
    new CheckedRework(truth, checked::changed).check(told);
    new CheckedSessions(truth, checked.cells, checked::add).check(told.sessions());
  }

  /** Of a bow or a session. */
  private void add(String column, boolean is) {
    Shooting how = truth.shooting();
    String sessions =
        how.sessionsOfState() + (how.sessionsOfState() == 1 ? " session" : " sessions");
    List<String> all = new ArrayList<>(rows);
    all.add(sessions);
    all.add(sessions + ", days %.1f %%".formatted(100 * how.day()));
    figures.add(all, column, is);
  }

  /** Of a rework. */
  private void changed(String column, boolean is) {
    Shooting how = truth.shooting();
    List<String> all = new ArrayList<>(rows);
    all.add(how.sides());
    all.add(how.sides() + ", controls " + how.controls());
    changes.add(all, column, is);
  }

  static boolean holds(Interval95 interval, double value) {
    return interval.low().orElse(Double.NEGATIVE_INFINITY) <= value
        && value <= interval.high().orElse(Double.POSITIVE_INFINITY);
  }

  private void bow(BowReportView bow) {
    CastView cast = bow.cast().orElseThrow();
    TrueBow ash = truth.reworked();
    double fps = ash.fps(cast.massGr().orElseThrow());
    add(CAST, holds(cast.ci95AnyDayFps(), fps));
    add("cast, today", holds(cast.ci95TodayFps(), cells.today(bow.cells(), cast)));
    AnyDayView pair = bow.anyDay().orElseThrow();
    add("E and K split", pair.split());
    if (pair.split()) {
      add("E", holds(pair.energyCi95Ftlbf(), ash.energyFtlbf()));
      add("K", holds(pair.virtualMassCi95Gr(), ash.virtualMassGr()));
    }
  }

  private void ranked(RankedBow bow) {
    double fps = cells.now(bow.bow()).fps(bow.cast().massGr().orElseThrow());
    add(ANY_CAST, holds(bow.cast().ci95AnyDayFps(), fps));
    add(TODAY_AS_ANY, holds(bow.cast().ci95TodayFps(), fps));
  }

  /** Of two bows alone, since intervals are wider for many pairs. */
  private void pair() {
    if (truth.bows().size() != 2) {
      return;
    }
    PairView pair = told.ranking().pairs().get(0);
    double gap = cast(pair.faster()) - cast(pair.slower());
    add("difference of two", holds(pair.ciHolmFps(), gap));
    add("wrongly ranked", pair.differ() && gap < 0);
  }

  private double cast(String name) {
    TrueBow bow = cells.now(name);
    return bow.fps(10 * bow.drawWeightLb());
  }

  private void reach(double massGr) {
    ReachedView ash = told.reach().reach().get(0);
    add("reach", holds(ash.ci95Gr(), massGr));
  }
}
