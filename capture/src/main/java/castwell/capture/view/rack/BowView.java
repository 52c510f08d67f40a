package castwell.capture.view.rack;

import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Rack.BowState;
import castwell.capture.view.Meaning;
import castwell.capture.view.StateName;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.ZoneId;
import java.util.Optional;

/** A bow in its present state. */
public record BowView(
    String name,
    @Meaning("since when it is so") String stateOn,
    @Meaning(value = "at the draw length", unit = "pound-force") double drawWeightLb,
    @Meaning(value = "of the draw weight", unit = "inch") double drawLengthIn,
    @JsonUnwrapped Measures<BowMeasure> measures,
    @Meaning("what was done to it") Optional<String> done,
    @Meaning("whether it is out of use") boolean retired) {

  /**
   * @param zone the time zone in which the state's date is told
   */
  public static BowView of(BowState state, boolean retired, ZoneId zone) {
    return new BowView(
        state.bow(),
        StateName.of(state.since(), zone),
        state.drawWeightN() / NEWTONS_PER_POUND,
        state.drawLengthM() / METRES_PER_INCH,
        state.measures(),
        Optional.of(state.done()).filter(done -> !done.isEmpty()),
        retired);
  }
}
