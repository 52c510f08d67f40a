package castwell.capture.view.shot;

import castwell.capture.view.Request;
import java.util.Optional;

/** The bow and arrow that a shot was shot with. One that is left out isn't known. */
public record RetagRequest(Optional<String> bow, Optional<String> arrow, Optional<String> why)
    implements Request {}
