package castwell.capture.view.shot;

import castwell.capture.view.Request;
import java.util.List;
import java.util.Optional;

/** The bows and arrows that several shots were shot with. */
public record RetagAllRequest(List<ShotTags> shots, Optional<String> why) implements Request {}
