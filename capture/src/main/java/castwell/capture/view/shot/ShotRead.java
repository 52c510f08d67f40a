package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Optional;

/** A shot, with the bow and arrow that fit it better than its tags. */
public record ShotRead(
    @JsonUnwrapped ShotView shot, @Meaning("null when nothing does") Optional<MisfitView> misfit) {}
