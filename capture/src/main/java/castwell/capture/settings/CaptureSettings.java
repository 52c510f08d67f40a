package castwell.capture.settings;

import castwell.analysis.speed.Calibration;
import castwell.analysis.verdict.Limits;
import castwell.capture.assembly.AssemblyTiming;
import java.time.ZoneId;

/**
 * What a person may set about capture.
 *
 * @param gates how a station's gates stand until someone enters otherwise
 * @param air the air where the board doesn't measure it
 * @param hostClockRelativeU relative standard uncertainty of this computer's clock rate
 * @param zone in which a session's date is told
 */
public record CaptureSettings(
    AssemblyTiming timing,
    Limits limits,
    Calibration gates,
    AirSettings air,
    double hostClockRelativeU,
    ZoneId zone) {}
