package castwell.capture.settings;

import castwell.analysis.reading.Limits;
import castwell.analysis.speed.Calibration;
import castwell.capture.assembly.AssemblyTiming;
import java.time.ZoneId;

/**
 * What a person may set about capture.
 *
 * @param timing how long to wait for edges
 * @param limits the limits within which a passage can be an arrow's
 * @param gates how a station's gates stand until someone enters another calibration
 * @param air the air to assume where the board doesn't measure it
 * @param hostClockRelativeU the relative standard uncertainty of this computer's clock rate
 * @param zone the time zone of a session's date
 */
public record CaptureSettings(
    AssemblyTiming timing,
    Limits limits,
    Calibration gates,
    AirSettings air,
    double hostClockRelativeU,
    ZoneId zone) {}
