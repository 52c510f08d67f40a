package castwell.capture.view.report.cell;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.OptionalDouble;

/**
 * The figures of a cell. Where nothing else is said intervals are of repeats alone; what the set-up
 * has in common stands beside them.
 */
public record CellFigures(
    OptionalDouble meanFps,
    OptionalDouble sdFps,
    OptionalDouble extremeSpreadFps,
    @Meaning("by this cell's repeats alone") Interval95 ci95RepeatsFps,
    @Meaning("for this day with this arrow, by the scatter of all the bow's shots")
        Interval95 ci95TodayFps,
    @JsonProperty("own_u_fps") OptionalDouble ownUFps,
    @JsonProperty("common_u_fps") OptionalDouble commonUFps,
    OptionalDouble gatesSdFps,
    OptionalDouble kineticEnergyFtlbf,
    Interval95 kineticEnergyCi95Ftlbf,
    @JsonProperty("kinetic_energy_common_u_ftlbf") OptionalDouble kineticEnergyCommonUFtlbf,
    OptionalDouble momentumSlugFps,
    Interval95 momentumCi95SlugFps,
    @JsonProperty("momentum_common_u_slug_fps") OptionalDouble momentumCommonUSlugFps) {}
