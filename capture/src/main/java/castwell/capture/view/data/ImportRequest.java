package castwell.capture.view.data;

import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A sheet to take in. */
public record ImportRequest(
    @Meaning("shots, bows, arrows or force-draw") String what,
    @Meaning("the sheet itself") String csv,
    @Meaning("what each of its headings is to be read as") Map<String, String> map,
    @Meaning("where it comes from") Optional<String> source,
    @Meaning(value = "standard uncertainty of one speed", unit = "foot per second")
        OptionalDouble ownFps,
    @Meaning(value = "that which all speeds share", unit = "percent") OptionalDouble commonPercent)
    implements Request {}
