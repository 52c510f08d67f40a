package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Optional;

/** A shot, with what is odd about it. */
public record ShotRead(
    @JsonUnwrapped ShotView shot,
    @Meaning("the bow and arrow that fit it better than its tags; null when nothing does")
        Optional<MisfitView> misfit,
    @Meaning("null where it isn't likely to be a stray") Optional<StrayHintView> stray) {}
