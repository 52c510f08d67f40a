package castwell.capture.view.shot;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;

import castwell.capture.store.Figures.ExportedFigure;
import castwell.capture.view.InUnits;
import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.OptionalDouble;

/**
 * A shot's figure under one of the calibrations that it ever had, so that old figures can be looked
 * up.
 */
public record FigureView(
    @Meaning("the shot") String shotId,
    @Meaning("number of the calibration") long calibration,
    @Meaning("when the calibration was entered, UTC") Instant enteredAt,
    @Meaning("whether it is the one in force for the shot") boolean inForce,
    @Meaning(value = "gate spacing", unit = "millimetre") double spacingMm,
    @Meaning(value = "the board's tick rate that was used", unit = "hertz") double tickRateHz,
    @JsonProperty("tick_rate_u_ppm")
        @Meaning(value = "its relative standard uncertainty", unit = "part per million")
        double tickRateUPpm,
    @Meaning("version of the rules that judged it") int rulesVersion,
    @Meaning("the rules' word") String verdict,
    @Meaning(value = "speed between the gates", unit = "foot per second") OptionalDouble speedFps,
    @JsonProperty("speed_u_own_fps")
        @Meaning(value = "its own uncertainty", unit = "foot per second")
        OptionalDouble speedUOwnFps,
    @JsonProperty("speed_u_common_fps")
        @Meaning(value = "its common uncertainty", unit = "foot per second")
        OptionalDouble speedUCommonFps,
    @Meaning("where the gates stand") String station,
    @Meaning("whether somebody measured the gate spacing") boolean spacingMeasured) {

  public static FigureView of(ExportedFigure exported) {
    var figure = exported.figure();
    return new FigureView(
        exported.shotId(),
        figure.calibrationId(),
        exported.entered(),
        exported.inForce(),
        exported.spacingM() * 1e3,
        figure.conditions().hz(),
        figure.conditions().hzRelativeU() * 1e6,
        figure.rulesVersion(),
        figure.verdict(),
        InUnits.of(figure.speedMps(), METRES_PER_FOOT),
        InUnits.of(figure.speedUOwnMps(), METRES_PER_FOOT),
        InUnits.of(figure.speedUCommonMps(), METRES_PER_FOOT),
        exported.station(),
        exported.isMeasured());
  }
}
