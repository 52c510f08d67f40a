package castwell.capture.view.shot;

import castwell.capture.view.Request;
import java.util.Optional;

/** What a shot was shot with: what is left out isn't known. */
public record RetagRequest(Optional<String> bow, Optional<String> arrow, Optional<String> why)
    implements Request {}
