package castwell.capture.view.report.bow;

import java.util.List;
import java.util.OptionalDouble;

/** What a force-draw curve says. */
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
