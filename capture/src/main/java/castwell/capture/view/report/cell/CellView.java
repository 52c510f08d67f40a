package castwell.capture.view.report.cell;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The shots of one session with one bow and one arrow: those that were shot, those that don't
 * count, and the figures of the rest.
 */
public record CellView(
    String bow,
    String stateOn,
    String session,
    String arrow,
    @Meaning(value = "mass of the arrow", unit = "grain") OptionalDouble massGr,
    @Meaning("how many count") int n,
    @Meaning("how many don't") int setAside,
    List<AsideReason> setAsideReasons,
    @Meaning("null of fewer than three shots") Optional<AloneView> alone,
    @JsonUnwrapped @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<CellFigures> figures,
    @Meaning("whether its speeds are those at the bow or those at the gates: bow, or gates")
        String speedAt) {}
