package castwell.capture.view.health;

import castwell.capture.view.Meaning;
import java.util.Optional;

/** One thing that may be well or not. */
public record ItemView(
    @Meaning("for programs: the same in every language") String name,
    @Meaning("for people") String title,
    Level level,
    @Meaning("what is well, or isn't") String sentence,
    @Meaning("what to do") String remedy,
    Optional<MeasuredView> measured) {}
