package castwell.capture.view.station;

import castwell.capture.view.Request;
import java.util.Optional;

/** Who is to shoot what: what is left out isn't known. */
public record TagsRequest(String station, Optional<String> bow, Optional<String> arrow)
    implements Request {}
