package castwell.web.season;

import castwell.capture.view.report.cell.CastView;
import castwell.capture.view.report.cell.CellView;
import java.util.List;

/** What the cells that reports tell of truly scatter about. */
record TrueCells(TrueSeason truth) {
  /** As it is in the end. */
  TrueBow now(String name) {
    return truth.bows().stream()
        .filter(bow -> bow.name().equals(name))
        .map(bow -> bow.equals(truth.bows().get(0)) ? truth.reworked() : bow)
        .findFirst()
        .orElseThrow();
  }

  /** Log ft/s that a cell's shots scatter about. */
  double log(CellView cell) {
    TrueBow first = truth.bows().get(0);
    TrueBow bow =
        cell.bow().equals(first.name()) && cell.stateOn().equals(TrueSeason.BEGAN)
            ? first
            : now(cell.bow());
    double grains = Math.rint(cell.massGr().orElseThrow());
    return Math.log(bow.fps(truth.arrows().get(grains)))
        + truth.effect(cell.bow(), grains)
        + truth.bowDay(cell.bow(), cell.session());
  }

  /** What v = sqrt(2 E / (m + K)) by least squares through the last day's cells gives. */
  double today(List<CellView> ofBow, CastView cast) {
    List<CellView> cells =
        ofBow.stream().filter(cell -> cell.session().equals(cast.today()) && cell.n() > 0).toList();
    double best = Double.POSITIVE_INFINITY;
    double fps = 0;
    for (double k = -300; k < 3000; k += 0.5) {
      double virtual = k;
      double n = cells.stream().mapToDouble(CellView::n).sum();
      double mean = cells.stream().mapToDouble(c -> c.n() * atCurve(c, virtual)).sum() / n;
      double squares =
          cells.stream().mapToDouble(c -> c.n() * Math.pow(atCurve(c, virtual) - mean, 2)).sum();
      if (squares < best) {
        best = squares;
        fps = Math.exp(mean - Math.log(cast.massGr().orElseThrow() + k) / 2);
      }
    }
    return fps;
  }

  private double atCurve(CellView cell, double virtualMassGr) {
    return log(cell) + Math.log(cell.massGr().orElseThrow() + virtualMassGr) / 2;
  }
}
