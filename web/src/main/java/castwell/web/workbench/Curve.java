package castwell.web.workbench;

import castwell.analysis.uncertainty.Estimate;
import castwell.web.chart.Mark;
import castwell.web.chart.Style;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import java.util.List;
import java.util.function.DoubleFunction;

/** What follows from an arrow's mass, in kg, drawn as a line in its 95 % band. */
record Curve(Speech speech, Dimension y, DoubleFunction<Estimate> of) {
  private static final int STEPS = 40;

  /**
   * The band, then the line.
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
      Estimate at = of.apply(massKg);
      x[i] = speech.in(Dimension.ARROW_MASS, massKg);
      value[i] = speech.in(y, at.value());
      low[i] = speech.in(y, at.interval().low());
      high[i] = speech.in(y, at.interval().high());
    }
    return List.of(new Mark.Band(name, style, x, low, high), new Mark.Line(name, style, x, value));
  }
}
