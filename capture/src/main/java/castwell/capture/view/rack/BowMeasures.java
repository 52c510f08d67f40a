package castwell.capture.view.rack;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_POUND;
import static castwell.analysis.unit.Units.METRES_PER_INCH;

import castwell.capture.store.Rack.Measures;
import castwell.capture.view.InUnits;
import castwell.capture.view.Meaning;
import java.util.Optional;
import java.util.OptionalDouble;

/** What else is measured of a bow in a state, in trade units, each where it is. */
public record BowMeasures(
    @Meaning(value = "length unstrung between the nocks", unit = "inch")
        OptionalDouble nockToNockIn,
    @Meaning(value = "how far the unstrung tips stay behind the back", unit = "inch")
        OptionalDouble stringFollowIn,
    @Meaning(value = "string to the grip", unit = "inch") OptionalDouble braceHeightIn,
    @Meaning(value = "of the bow", unit = "pound") OptionalDouble massLb,
    @Meaning("of what it is made") Optional<String> wood,
    @Meaning(value = "at the nocks", unit = "millimetre") OptionalDouble tipWidthMm,
    @Meaning(value = "of the string", unit = "grain") OptionalDouble stringMassGr) {

  public static BowMeasures of(Measures stored) {
    return new BowMeasures(
        InUnits.of(stored.nockToNockM(), METRES_PER_INCH),
        InUnits.of(stored.stringFollowM(), METRES_PER_INCH),
        InUnits.of(stored.braceHeightM(), METRES_PER_INCH),
        InUnits.of(stored.massKg(), KILOGRAMS_PER_POUND),
        stored.wood(),
        InUnits.of(stored.tipWidthM(), 1e-3),
        InUnits.of(stored.stringMassKg(), KILOGRAMS_PER_GRAIN));
  }

  /** As they are stored. */
  public Measures stored() {
    return new Measures(
        InUnits.si(nockToNockIn, METRES_PER_INCH),
        InUnits.si(stringFollowIn, METRES_PER_INCH),
        InUnits.si(braceHeightIn, METRES_PER_INCH),
        InUnits.si(massLb, KILOGRAMS_PER_POUND),
        wood,
        InUnits.si(tipWidthMm, 1e-3),
        InUnits.si(stringMassGr, KILOGRAMS_PER_GRAIN));
  }
}
