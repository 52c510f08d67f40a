package castwell.capture.view.station;

import castwell.capture.view.Request;
import java.util.Optional;

/** The tags to set at a station. A bow or an arrow that is left out isn't known. */
public record TagsRequest(String station, Optional<String> bow, Optional<String> arrow)
    implements Request {}
