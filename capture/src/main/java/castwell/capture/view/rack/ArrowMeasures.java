package castwell.capture.view.rack;

import static castwell.analysis.unit.Units.METRES_PER_INCH;

import castwell.capture.store.Rack.Arrow;
import castwell.capture.view.InUnits;
import castwell.capture.view.Meaning;
import java.util.Optional;
import java.util.OptionalDouble;

/** What else is known of an arrow, in trade units, each where it is. */
public record ArrowMeasures(
    @Meaning(value = "of the shaft", unit = "inch") OptionalDouble lengthIn,
    @Meaning(value = "of the shaft", unit = "inch") OptionalDouble diameterIn,
    @Meaning("what kind of point") Optional<String> point,
    @Meaning("a person's words") Optional<String> note) {

  public static ArrowMeasures of(Arrow arrow) {
    return new ArrowMeasures(
        InUnits.of(arrow.lengthM(), METRES_PER_INCH),
        InUnits.of(arrow.diameterM(), METRES_PER_INCH),
        arrow.point(),
        arrow.note());
  }
}
