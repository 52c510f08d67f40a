package castwell.web.workbench;

import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.web.chart.Mark;
import castwell.web.chart.Style;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import java.util.List;
import java.util.function.Function;

/** A quantity that follows from an arrow's mass, drawn as a line in its 95 % band. */
record Curve(Speech speech, Dimension y, Function<Quantity, Quantity> of) {
  private static final int STEPS = 40;

  /**
   * The line, and the band by what the shots alone tell.
   *
   * @param fromKg the lightest arrow
   */
  List<Mark> marks(String name, Style style, double fromKg, double toKg) {
    double[] x = new double[STEPS + 1];
    double[] value = new double[x.length];
    double[] low = new double[x.length];
    double[] high = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double massKg = fromKg + (toKg - fromKg) * i / STEPS;
      Quantity at = of.apply(Quantity.exact(massKg)).only(Kind.OWN);
      Interval interval = at.interval(RackPage.COVERAGE);
      x[i] = speech.in(Dimension.ARROW_MASS, massKg);
      value[i] = speech.in(y, at.value());
      low[i] = speech.in(y, interval.low());
      high[i] = speech.in(y, interval.high());
    }
    return List.of(
        new Mark.Band(name, style, x, finite(low, value), finite(high, value)),
        new Mark.Line(name, style, x, value));
  }

  /** The ends of the band; where nothing bounds it, there is none. */
  private static double[] finite(double[] ends, double[] otherwise) {
    double[] finite = ends.clone();
    for (int i = 0; i < finite.length; i++) {
      if (!Double.isFinite(finite[i])) {
        finite[i] = otherwise[i];
      }
    }
    return finite;
  }
}
