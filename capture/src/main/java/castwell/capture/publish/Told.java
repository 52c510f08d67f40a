package castwell.capture.publish;

import castwell.capture.station.LinkState;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What is told of a station beside what the feed tells: each is asked for by the station's name,
 * whenever it is told.
 *
 * @param plan empty when none runs
 */
public record Told(
    Function<String, LinkState> link,
    Function<String, Map<String, Object>> health,
    Function<String, Optional<Map<String, Object>>> plan) {}
