package castwell.capture.publish;

import castwell.capture.station.LinkState;
import castwell.capture.view.health.StationHealth;
import castwell.capture.view.plan.PlanView;
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
    Function<String, StationHealth> health,
    Function<String, Optional<PlanView>> plan) {}
