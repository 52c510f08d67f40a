package castwell.capture.view.report.bow;

import castwell.capture.view.Interval95;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A bow's energy and virtual mass by least squares, with what repeats alone tell of their
 * uncertainties: as if days didn't differ.
 */
public record VirtualMassView(
    OptionalDouble energyFtlbf,
    OptionalDouble energySe,
    Interval95 energyCi95RepeatsFtlbf,
    @JsonProperty("energy_common_u_ftlbf") OptionalDouble energyCommonUFtlbf,
    OptionalDouble virtualMassGr,
    OptionalDouble virtualMassSe,
    Interval95 virtualMassCi95RepeatsGr,
    OptionalDouble correlation,
    OptionalDouble residualSdFps,
    int degreesOfFreedom,
    Optional<LackOfFitView> lackOfFit) {}
