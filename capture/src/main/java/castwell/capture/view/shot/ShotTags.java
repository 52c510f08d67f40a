package castwell.capture.view.shot;

import castwell.capture.view.Request;
import java.util.Optional;

/** One of several shots, with the bow and arrow that it was shot with. */
public record ShotTags(String shotId, Optional<String> bow, Optional<String> arrow)
    implements Request {}
