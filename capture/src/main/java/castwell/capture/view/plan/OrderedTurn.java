package castwell.capture.view.plan;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Optional;

/** A turn with what became of it. */
public record OrderedTurn(
    @JsonUnwrapped TurnView which, @Meaning("null before") Optional<Became> became) {}
