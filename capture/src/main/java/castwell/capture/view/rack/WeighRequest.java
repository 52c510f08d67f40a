package castwell.capture.view.rack;

import castwell.capture.view.Meaning;
import castwell.capture.view.Request;

/** A weighing of an arrow. */
public record WeighRequest(@Meaning(value = "what the scale says", unit = "grain") double massGr)
    implements Request {}
