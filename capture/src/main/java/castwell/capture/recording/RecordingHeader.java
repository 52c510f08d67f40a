package castwell.capture.recording;

import java.time.Instant;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What a recording says about itself.
 *
 * @param started the instant from which its lines count their microseconds
 * @param gateSpacingM the distance from gate A to gate B, above 0
 * @param gateSpacingUncertaintyM the spacing's standard uncertainty, at least 0
 * @param gatesFromBowM the distance from the bow to gate A, at least 0
 * @param notes the header's other keys with their values
 */
public record RecordingHeader(
    String name,
    Instant started,
    OptionalDouble gateSpacingM,
    OptionalDouble gateSpacingUncertaintyM,
    OptionalDouble gatesFromBowM,
    Map<String, String> notes) {

  public RecordingHeader {
    notes = Map.copyOf(notes);
  }

  public static RecordingHeader of(String name, Instant started) {
    return new RecordingHeader(
        name,
        started,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Map.of());
  }
}
