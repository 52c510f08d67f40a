package castwell.capture.publish;

import castwell.capture.station.LinkState;
import castwell.capture.view.health.StationHealth;
import castwell.capture.view.plan.PlanView;
import java.util.Optional;
import java.util.function.Function;

/**
 * What a station's messages tell besides the feed. Each part is looked up by the station's name
 * when it is to be sent.
 *
 * @param plan empty when no plan is under way
 */
public record Told(
    Function<String, LinkState> link,
    Function<String, StationHealth> health,
    Function<String, Optional<PlanView>> plan) {}
