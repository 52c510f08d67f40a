package castwell.capture.view.report.bow;

import castwell.capture.view.Interval95;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A bow's two numbers, energy and virtual mass, with their uncertainties. */
public record VirtualMassView(
    OptionalDouble energyFtlbf,
    OptionalDouble energySe,
    Interval95 energyCi95Ftlbf,
    @JsonProperty("energy_common_u_ftlbf") OptionalDouble energyCommonUFtlbf,
    OptionalDouble virtualMassGr,
    OptionalDouble virtualMassSe,
    Interval95 virtualMassCi95Gr,
    OptionalDouble correlation,
    OptionalDouble residualSdFps,
    int degreesOfFreedom,
    Optional<LackOfFitView> lackOfFit,
    List<CornerView> jointRegion,
    boolean jointRegionOpen) {}
