package castwell.capture.view.report.bow;

import java.util.List;
import java.util.OptionalDouble;

/** The stored energy, by the force-draw curve. */
public record StoredEnergyView(
    double storedEnergyFtlbf,
    double storedEnergyTrapezoidFtlbf,
    double energyPerPoundFtlbf,
    double fullness,
    double drawWeightLb,
    double fullDrawIn,
    boolean fromBraceHeight,
    OptionalDouble stacksAtIn,
    OptionalDouble hysteresisPercent,
    List<StoredArrowView> arrows) {}
