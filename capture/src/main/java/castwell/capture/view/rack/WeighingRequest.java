package castwell.capture.view.rack;

import castwell.capture.view.Request;
import java.util.Optional;

/** Whether a weighing counts. */
public record WeighingRequest(boolean setAside, Optional<String> why) implements Request {}
