package castwell.capture.view.rack;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;

import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** An arrow as last entered. */
public record ArrowView(
    String name,
    @Meaning(value = "as last weighed", unit = "grain") double massGr,
    @JsonUnwrapped Measures<ArrowMeasure> measures,
    @Meaning("whether it is out of use") boolean retired) {

  public static ArrowView of(Arrow arrow, boolean retired) {
    return new ArrowView(
        arrow.name(), arrow.massKg() / KILOGRAMS_PER_GRAIN, arrow.measures(), retired);
  }
}
